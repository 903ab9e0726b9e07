"""Reads check values in the form that `../src/values.rs` describes, into one dict a value; `given` is a dict of the inputs."""
import tomllib
from pathlib import Path

VALUES = Path(__file__).resolve().parent.parent / "values"


def over(general, more):
    """What is said of a value generally, and more of it."""
    out = {**general, **more, "given": {}}
    for key, between in (("id", "-"), ("what", ": ")):
        if key in general and key in more:
            out[key] = general[key] + between + more[key]
    for given in general.get("given", {}), more.get("given", {}):
        for line in given if isinstance(given, list) else [given]:
            out["given"].update(line)
    return out


def halves(line):
    left, _, right = line.partition("||" if "||" in line else "|")
    return [[cell.strip() for cell in half.split("|")] for half in (left, right)]


def of_table(table):
    rows, results = table.pop("rows"), table.pop("results", {})
    (_, *inputs), columns = halves(rows.splitlines()[0])
    for (id, *given), cells in map(halves, rows.splitlines()[1:]):
        said = {k: x for k, x in zip(columns, cells) if x}
        row = over(table, {"given": {k: x for k, x in zip(inputs, given) if x}, **{k: x for k, x in said.items() if k not in results}})
        if not results:
            yield over(row, {"id": id})
        for name in said.keys() & results.keys():
            yield over(over(row, results[name]), {"id": name.replace("*", id) if "*" in name else f"{id}-{name}", "expect": said[name]})


def read(text):
    file = tomllib.loads(text)
    shared, texts = over({}, file.get("shared", {})), {f"[{k}]": x for k, x in file.get("texts", {}).items()}
    values = [over(shared, v) for v in file.get("value", [])]
    values += [v for table in file.get("table", []) for v in of_table(over(shared, table))]
    return [{**v, **{k: texts.get(v[k], v[k]) for k in ("source", "note") if k in v}} for v in values]


def values(name):
    """The values of a file by id."""
    return {v["id"]: v for v in read((VALUES / name).read_text())}
