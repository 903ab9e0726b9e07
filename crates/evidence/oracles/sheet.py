"""Writes one file of check values: a [made] head, then one [[value]] a number."""
import platform
from importlib.metadata import version
from pathlib import Path

from mpmath import mp, mpf

mp.dps = 50
VALUES = Path(__file__).resolve().parent.parent / "values"
TEXT = ("id", "what", "given", "expect", "tolerance", "unit", "kind", "mark", "source", "note")


def digits(x, n=17):
    if abs(x) < mpf("1e-40"):
        return "0.0"  # a zero that 50 digits did not quite reach
    return mp.nstr(mpf(x), n, min_fixed=-40, max_fixed=40)


def quoted(text):
    return '"' + str(text).replace("\\", "\\\\").replace('"', '\\"') + '"'


class Sheet:
    def __init__(self, script, packages, about):
        self.head = f"# {about}\n# Made once and kept; oracles/README.md says how to make it again.\n\n[made]\n" + "\n".join([
            f"script = {quoted('oracles/' + script)}",
            f"python = {quoted(platform.python_version())}",
            "packages = [" + ", ".join(quoted(f"{p} {version(p)}") for p in packages) + "]",
            f"command = {quoted('python ' + script)}",
        ]) + "\n"
        self.values = []

    def add(self, **value):
        """expect is a number or ready digits; given a dict of strings."""
        if not isinstance(value["expect"], str):
            value["expect"] = digits(value["expect"])
        self.values.append(value)

    def save(self, name):
        out = [self.head]
        for v in self.values:
            lines = ["[[value]]"]
            for key in TEXT:
                if key == "given":
                    lines.append("given = { " + ", ".join(f"{k} = {quoted(x)}" for k, x in v["given"].items()) + " }")
                elif key in v:
                    lines.append(f"{key} = {quoted(v[key])}")
            out.append("\n".join(lines) + "\n")
        (VALUES / name).write_text("\n".join(out))
        print(f"{name}: {len(self.values)} values")
