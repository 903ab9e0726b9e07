"""Puts check values into tables: what the values of a table share stands once above it, the rest in a row each.

A value is a dict of its fields, `given` a dict of its inputs. Values whose ids begin the same and whose inputs have the same
names go into one table, a row for each set of inputs, where a line can hold that; else each case has a table of its own.
"""
from itertools import groupby

FIELDS = ("what", "unit", "tolerance", "kind", "mark", "source", "note")
COLUMNS = ("expect", "unit", "tolerance", "kind", "mark", "note", "source", "what")
ROW = 160  # characters that a row may have


def grouped(items, key):
    found = {}
    for item in items:
        found.setdefault(key(item), []).append(item)
    return list(found.values())


def words(value):
    return value["id"].split("-")


def beginning(lists):
    """What lists of words begin with; of each a word at least is left over."""
    n = 0
    while n < min(map(len, lists)) - 1 and len({x[n] for x in lists}) == 1:
        n += 1
    return lists[0][:n]


def topic(value):
    return value.get("what", "").rpartition(": ")[0]


def shared(values):
    first = values[0]
    head = {k: first[k] for k in FIELDS if k in first and all(v.get(k) == first[k] for v in values)}
    if topic(first) and all(topic(v) == topic(first) for v in values):
        head.setdefault("what", topic(first))
    return {**head, "given": {k: x for k, x in first["given"].items() if all(v["given"].get(k) == x for v in values)}}


def without(value, head):
    rest = {k: x for k, x in value.items() if k not in head or k == "what"}
    if "what" in head:
        rest["what"] = value["what"][len(head["what"]):].removeprefix(": ")
    return {**rest, "given": {k: x for k, x in value["given"].items() if k not in head["given"]}}


class Table:
    """A row is an id, the inputs by name, the cells by column; results are the fields of each column that is one."""

    def __init__(self, values, columns, rows, results):
        self.head = {"id": "-".join(base(values)), **shared(values)}
        self.columns, self.rows, self.results = columns, rows, results
        self.inputs = list(dict.fromkeys(k for _, given, _ in rows for k in given))

    def lines(self):
        left = [["id", *self.inputs]] + [[id, *(given.get(k, "") for k in self.inputs)] for id, given, _ in self.rows]
        right = [self.columns] + [[cells.get(k, "") for k in self.columns] for _, _, cells in self.rows]
        between = " || " if self.inputs else " | "
        return [(a + between + b).rstrip() for a, b in zip(aligned(left), aligned(right))]

    def fits(self):
        return max(map(len, self.lines())) <= ROW


def aligned(rows):
    widths = [max(map(len, column)) for column in zip(*rows)]
    return [" | ".join(cell.ljust(width) for cell, width in zip(row, widths)) for row in rows]


def base(values):
    return beginning([words(v) for v in values])


def a_value_a_row(values):
    head, cut = shared(values), len(base(values))
    rest = [without(v, head) for v in values]
    columns = [k for k in COLUMNS if any(v.get(k) for v in rest)]
    rows = [("-".join(words(v)[cut:]), v["given"], {k: v[k] for k in columns if v.get(k)}) for v in rest]
    return Table(values, columns, rows, {})


def split(ids):
    """The row, and the names of its results: an id is `row-name`, or `name-row` and then the name is `name-*`."""
    if all(i[:-1] == ids[0][:-1] for i in ids):
        return "-".join(ids[0][:-1]), [i[-1] for i in ids]
    row = beginning([i[::-1] for i in ids])[::-1]
    return "-".join(row), ["-".join(i[:len(i) - len(row)]) + "-*" for i in ids]


def a_case_a_row(values):
    """None where a result has not the same unit, source and so on in every row."""
    head, cut = shared(values), len(base(values))
    rows, results = [], {}
    for case in cases_of(values):
        id, names = split([words(v)[cut:] for v in case])
        rest = [without(v, head) for v in case]
        for name, v in zip(names, rest):
            fields = {k: v[k] for k in FIELDS if v.get(k)}
            if not id or results.setdefault(name, fields) != fields:
                return None
        rows.append((id, rest[0]["given"], {name: v["expect"] for name, v in zip(names, rest)}))
    return Table(values, list(results), rows, results)


def cases_of(values):
    return grouped(values, lambda v: tuple(v["given"].items()))


def table(values):
    """None where no row could hold it."""
    made = a_value_a_row(values) if len(cases_of(values)) in (1, len(values)) else a_case_a_row(values)
    return made if made and made.fits() else None


def whole(values):
    return [values]


def by_topic(values):
    return grouped(values, topic)


def by_results(values):
    """Cases with the same results, of the same unit, source and so on."""
    def results(case):
        return tuple((name, *(v.get(k) for k in FIELDS)) for name, v in zip(split([words(v) for v in case])[1], case))
    return [sum(cases, []) for cases in grouped(cases_of(values), results)]


def by_both(values):
    return sum(map(by_results, by_topic(values)), [])


def tables(values, vary):
    """vary: the inputs that vary within a case."""
    def fixed(value):
        return tuple((k, x) for k, x in value["given"].items() if k not in vary)

    for alike in grouped(values, lambda v: (words(v)[0], tuple(k for k, _ in fixed(v)))):
        cases = [list(case) for _, case in groupby(alike, fixed)]
        ways = ([table(part) for part in way(alike)] for way in (whole, by_topic, by_results, by_both))
        made = next((way for way in ways if all(way)), ())
        if any(len(cases_of(case)) > 1 for case in cases) and not all(t.results for t in made):
            made = ()  # a row for each value would say the inputs of a case over and over
        yield from made or (table(case) or a_value_a_row(case) for case in cases)
