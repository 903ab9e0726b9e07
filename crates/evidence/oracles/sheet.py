"""Writes one file of check values: a [made] head, then what is in it in the form that `../src/values.rs` describes."""
import platform
from importlib.metadata import version
from textwrap import wrap

from mpmath import mp, mpf

from form import VALUES, read
from layout import laid_out, quoted
from tables import ROW

mp.dps = 50


def digits(x, n=17):
    if abs(x) < mpf("1e-40"):
        return "0.0"  # a zero that 50 digits did not quite reach
    return mp.nstr(mpf(x), n, min_fixed=-40, max_fixed=40)


class Sheet:
    def __init__(self, script, packages, about, vary=""):
        """vary: the inputs that distinguish the numbers of one case, such as its times; all others make another case."""
        about = [line for part in about.split("\n#") for line in wrap(part, ROW - 2) or [""]]
        self.head = "\n".join([
            *(f"# {line.strip()}".rstrip() for line in about),
            "# Made once and kept; oracles/README.md says how to make it again.",
            "",
            "[made]",
            f"script = {quoted('oracles/' + script)}",
            f"python = {quoted(platform.python_version())}",
            "packages = [" + ", ".join(quoted(f"{p} {version(p)}") for p in packages) + "]",
            f"command = {quoted('python ' + script)}",
        ]) + "\n"
        self.values, self.vary = [], vary.split()

    def add(self, **value):
        """expect is a number or ready digits; given a dict of strings."""
        if not isinstance(value["expect"], str):
            value["expect"] = digits(value["expect"])
        self.values.append(value)

    def save(self, name):
        values = [{k: str(x) if k != "given" else {i: str(y) for i, y in x.items()} for k, x in v.items()} for v in self.values]
        text = self.head + "\n" + laid_out(values, self.vary)
        assert sorted(read(text), key=lambda v: v["id"]) == sorted(values, key=lambda v: v["id"]), f"{name} does not read back"
        (VALUES / name).write_text(text)
        print(f"{name}: {len(self.values)} values")
