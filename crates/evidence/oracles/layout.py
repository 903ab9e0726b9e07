"""Writes tables of check values in the form that `../src/values.rs` describes."""
from collections import Counter
from re import findall

from form import over
from tables import ROW, shared, tables, without

ORDER = ("id", "what", "given", "expect", "unit", "tolerance", "kind", "mark", "source", "note")
LINE = 190  # characters that a line may have which is no row, before it is broken
LONG = ("source", "note")  # texts that get a name, such as [1]
SHORT = 20  # characters of a text that needs none


def escaped(text):
    return text.replace("\\", "\\\\").replace('"', '\\"')


def broken(words):
    """As few lines as hold the words."""
    out = [""]
    for word in words:
        if out[-1] and len(out[-1] + word) > ROW - 12:
            out.append("")
        out[-1] += word
    return out


def quoted(text):
    """On several lines where it is long: TOML leaves out the end of a line after a backslash."""
    if len(text) < LINE - 20:
        return f'"{escaped(text)}"'
    return '"""\\\n' + "\\\n".join(broken(findall(r"\S+\s*", escaped(text)))) + '"""'


def inline(fields):
    return "{ " + ", ".join(f"{k} = {quoted(x)}" for k, x in fields.items()) + " }" if fields else "{}"


def inputs(given):
    """As several tables where it is long: TOML keeps such a table on one line."""
    if len(inline(given)) < LINE - 8:
        return inline(given)
    lines = broken([f"{k} = {quoted(x)}, " for k, x in given.items()])
    return "[{ " + " },\n         { ".join(line.removesuffix(", ") for line in lines) + " }]"


def block(name, fields, *lines):
    stated = [f"{k} = {inputs(fields[k]) if k == 'given' else quoted(fields[k])}" for k in ORDER if k in fields]
    return "\n".join([name, *stated, *lines])


def record(table):
    head = {k: x for k, x in table.head.items() if x}
    if len(table.rows) == 1 and not table.results:
        id, given, cells = table.rows[0]
        return block("[[value]]", over(head, {"id": id, "given": given, **cells}))
    results = [f"results.{quoted(k) if '*' in k else k} = {inline(x)}" for k, x in table.results.items()]
    return block("[[table]]", head, *results, "rows = '''", *table.lines(), "'''")


def named(values, vary):
    """The tables, and the texts that have a name in them: those said twice, or in a row that is too long with them."""
    said = Counter(v[k] for v in values for k in LONG if k in v)
    names = {text: f"[{i}]" for i, text in enumerate(said) if said[text] > 1 or "|" in text}
    made = list(tables([{**v, **{k: names.get(v[k], v[k]) for k in LONG if k in v}} for v in values], vary))
    for table in made:
        for _, _, cells in () if table.fits() else table.rows:
            cells.update({k: names.setdefault(cells[k], f"[+{len(names)}]") for k in LONG if len(cells.get(k, "")) > SHORT})
    heads = [t.head for t in made]
    cells = [fields for t in made for fields in (*t.results.values(), *(cells for _, _, cells in t.rows))]
    # above one table only, a name is the text itself after all; the others are counted from 1
    uses = Counter(f[k] for f in heads + cells * 2 for k in LONG if k in f)
    texts = [text for text, name in names.items() if uses[name] > 1]
    final = {name: f"[{texts.index(text) + 1}]" if text in texts else text for text, name in names.items()}
    for fields in heads + cells:
        fields.update({k: final.get(fields[k], fields[k]) for k in LONG if k in fields})
    return made, texts


def laid_out(values, vary):
    head = shared(values)
    made, texts = named([without(v, head) for v in values], vary)
    blocks = [block("[texts]", {}, *(f"{i} = {quoted(text)}" for i, text in enumerate(texts, 1)))] if texts else []
    blocks += [block("[shared]", {k: x for k, x in head.items() if x})] if any(head.values()) else []
    return "\n\n".join(blocks + [record(table) for table in made]) + "\n"
