#!/usr/bin/env python3
"""Holds what the command writes, and what people write for it, against reference/schema.

    tests/doc/schemas.py PELAGE            every JSON of tests/cli and tests/net, every TOML and line they read
    tests/doc/schemas.py PELAGE --all      and every other command of tests/net, asked for JSON

JSON of ours says which schema it has ("schema": "pelage/plan/1" is plan.json). Nothing may be in it that its
schema doesn't have; and no schema may be without a document. Needs a general validator, python3-jsonschema;
without one it ends with 77.
"""
import argparse
import datetime
import importlib.machinery
import importlib.util
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
import warnings
from concurrent.futures import ThreadPoolExecutor

warnings.filterwarnings("ignore", category=DeprecationWarning)
try:
    import jsonschema
except ImportError:
    print("schemas: there is no python3-jsonschema here")
    sys.exit(77)

ROOT = pathlib.Path(__file__).resolve().parents[2]
SCHEMAS = ROOT / "reference/schema"
TODAY = "2026-11-25"
DATED = {"plan", "regrow", "log", "sheet", "kit", "week", "diary", "quiz"}


def module(name, path):
    """A Python program without .py, as a module."""
    loader = importlib.machinery.SourceFileLoader(name, str(path))
    found = importlib.util.module_from_spec(importlib.util.spec_from_loader(name, loader))
    loader.exec_module(found)
    return found


NET = module("net_run", ROOT / "tests/net/run")


# ---- what the command writes ----

def values_in(data):
    """The JSON value of these bytes, or one a line; none where they are no JSON."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return []
    if not text.startswith("{"):
        return []
    try:
        return [json.loads(text)]
    except ValueError:
        pass
    try:
        return [json.loads(line) for line in text.splitlines()]
    except ValueError:
        return []


def answers_of(program, words, at, watched, env, source):
    """What a command that runs in `at` writes to standard output and into the folder watched, as JSON values."""
    before = {p for p in watched.rglob("*") if p.is_file()}
    done = subprocess.run([program, *words], cwd=at, input=source, capture_output=True, timeout=120, check=False,
                          env={"PATH": "/usr/bin:/bin", "LC_ALL": "C", "TZ": "UTC", "HOME": str(at), **env})
    out = values_in(done.stdout)
    for made in sorted({p for p in watched.rglob("*") if p.is_file()} - before):
        out += values_in(made.read_bytes())
        made.unlink()
    return out


def net_commands(everything):
    """Commands of the net that write JSON, as (line, environment, words, name of standard input)."""
    for group in sorted((NET.HERE / "commands").iterdir()):
        for line in group.read_text("ascii").splitlines():
            if not line.strip() or line.startswith("#"):
                continue
            env, words, source = NET.words_of(line)
            asks = b"json" in b" ".join(words) or b"--roster" in words or words[:1] in ([b"log"], [b"quiz"])
            if not asks and everything and words and b"--format" not in words and b"--ask" not in words:
                words, asks = [*words, b"--format", b"json"], True
            if asks:
                yield f"tests/net/commands/{group.name}: {line}", env, words, source


def net_answers(program, everything):
    with tempfile.TemporaryDirectory() as scratch, ThreadPoolExecutor(2) as pool:
        folders = NET.scratch_folders(scratch)

        def run(command):
            line, env, words, source = command
            folder = folders.get()
            try:
                given = (folder / source).read_bytes() if source else b""
                return line, answers_of(program, words, folder, folder, env, given)
            finally:
                folders.put(folder)

        yield from pool.map(run, net_commands(everything))


class case:
    """A case of tests/cli: its files, what it runs, what it says on standard input."""

    def __init__(self, where):
        self.where, self.files, self.words, self.input, self.exit = where, {}, [], b"", 0


def cases():
    split = re.compile(r"(?:'[^']*'|[^ '])+")
    for path in [*sorted((ROOT / "tests/cli").glob("*.test")), *sorted((ROOT / "tests/cli/table").glob("*.test"))]:
        now, into = None, None
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1):
            if line.startswith("|"):
                if into == "input":
                    now.input += line[1:].encode() + b"\n"
                elif into:
                    now.files[into] = now.files.get(into, "") + line[1:] + "\n"
                continue
            into = None
            if line.startswith("case "):
                if now:
                    yield now
                now = case(f"{path.relative_to(ROOT)}:{number}")
            elif line.startswith("file "):
                into = line[5:]
                now.files[into] = ""
            elif line == "input":
                into = "input"
            elif line.startswith("run"):
                now.words = [w.replace("'", "") for w in split.findall(line[4:])]
            elif line.startswith("exit "):
                now.exit = int(line[5:])
        if now:
            yield now


def case_answers(program, all_cases):
    """The JSON of every case that writes some, on the day of tests/cli."""
    def run(one):
        with tempfile.TemporaryDirectory() as scratch:
            folder = pathlib.Path(scratch)
            for name, text in one.files.items():
                (folder / name).parent.mkdir(parents=True, exist_ok=True)
                (folder / name).write_text(text, "utf-8")
            words = [str(folder / w[1:]) if w.startswith("@") else w for w in one.words]
            if "--today" not in words and words[0] in DATED:
                words += ["--today", TODAY]
            return one.where, answers_of(program, words, ROOT, folder, {}, one.input)

    asking = [c for c in all_cases if c.words and
              ("json" in c.words or "--roster" in c.words or c.words[0] in ("log", "quiz"))]
    with ThreadPoolExecutor(2) as pool:
        yield from pool.map(run, asking)


# ---- what people write ----

def kind_of(table):
    """Which file of people a TOML table is: salon, style or dog; None where it is none."""
    return ("salon" if "kit" in table else "style" if "zones" in table or "extends" in table
            else "dog" if "size" in table else None)


def plain(value):
    """A TOML value as JSON has it: a date is its text."""
    if isinstance(value, dict):
        return {k: plain(v) for k, v in value.items()}
    if isinstance(value, list):
        return [plain(v) for v in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


def written_files(all_cases):
    """(where, kind, value) of every sound file of people, and of every line of a roster that is planned."""
    for folder in "reference/demo", "reference/styles", "tests/net/files":
        for path in sorted((ROOT / folder).rglob("*.toml")):
            if "faulty" not in path.parts[-2] and "faulty-salon" not in path.parts:
                table = plain(tomllib.loads(path.read_text("utf-8")))
                yield str(path.relative_to(ROOT)), kind_of(table), table
    for one in all_cases:
        if one.exit > 1 or "check" in one.words[:2] or "hostile" in one.where:
            continue  # faulty on purpose, or may be
        for name, text in one.files.items():
            try:
                table = plain(tomllib.loads(text)) if name.endswith(".toml") else {}
            except tomllib.TOMLDecodeError:
                continue
            if kind_of(table):
                yield f"{one.where} {name}", kind_of(table), table
        if "--roster" in one.words:
            given = one.files.get(one.words[one.words.index("--roster") + 1][1:], one.input.decode("utf-8"))
            for line in given.lstrip("\ufeff").splitlines():
                yield f"{one.where} roster", "roster-line", json.loads(line)


# ---- the schemas ----

class schemas:
    """All of reference/schema, and what was found wrong."""

    def __init__(self):
        self.of = {p.stem: json.loads(p.read_text("utf-8")) for p in sorted(SCHEMAS.glob("*.json"))}
        store = {(SCHEMAS / f"{n}.json").as_uri(): s for n, s in self.of.items()}
        self.judge = {}
        for name, schema in self.of.items():
            jsonschema.Draft202012Validator.check_schema(schema)
            at = jsonschema.RefResolver((SCHEMAS / f"{name}.json").as_uri(), schema, store=store)
            self.judge[name] = jsonschema.Draft202012Validator(schema, resolver=at)
        self.seen = dict.fromkeys(self.of, 0)
        self.wrong = []

    def hold(self, where, kind, value):
        if kind not in self.judge:
            self.wrong.append(f"{where}: no schema for {kind or 'it'}")
            return
        self.seen[kind] += 1
        if self.seen[kind] == 1 and not list(self.judge[kind].iter_errors({**value, "surprise": 1})):
            self.wrong.append(f"{kind}.json takes a key that it doesn't have")
        for error in self.judge[kind].iter_errors(value):
            at = "/".join(map(str, error.absolute_path))
            self.wrong.append(f"{where}: {kind}.json at /{at}: {error.message[:300]}")

    def properties(self, kinds):
        found = set()

        def look(node):
            if isinstance(node, dict):
                if isinstance(node.get("properties"), dict):
                    found.update(node["properties"])
                for value in node.values():
                    look(value)
            elif isinstance(node, list):
                for value in node:
                    look(value)

        for kind in kinds:
            look(self.of[kind])
        return found


def kind_of_json(value):
    """The name of the schema that a JSON value of ours says it has; of the lines of files by their keys."""
    if not isinstance(value, dict):
        return None
    says = re.fullmatch(r"pelage/([a-z-]+)/\d+", str(value.get("schema", "")))
    return (says[1] if says else "record-line" if "crc32" in value and "entry" in value
            else "quiz-line" if "crc32" in value else None)


PEOPLE = ("dog", "roster-line", "style", "salon")


def keys_in_code(known):
    """Keys that the code writes or reads, each of which some schema has; and the other way round."""
    lib = ROOT / "lib"
    writers = [*lib.glob("answers/*json*.cpp"), lib / "answers/plan_values.cpp", lib / "answers/quiz_score.cpp",
               lib / "answers/record_against_sheet.cpp", lib / "roster/line_json.cpp", lib / "data/record_line.cpp"]
    readers = [lib / f"data/read/{n}.cpp" for n in ("dog", "dog_findings", "style", "style_limits", "season",
                                                     "instruction", "salon", "kit", "kit_tools")]
    writes = re.compile(r'\[\s*"([a-z_0-9]+)"\s*\]|\{"([a-z_0-9]+)",|key\("([a-z_0-9]+)"\)|add_\w+\("([a-z_0-9]+)"')
    reads = re.compile(r'get\w*(?:<\w+>)?\((?:\w+, )*"([a-z_]+)"')
    for what, files, pattern, kinds in (("writes", writers, writes, [k for k in known.of if k not in PEOPLE]),
                                        ("reads", readers, reads, [*PEOPLE, "common"])):
        has = known.properties(kinds)
        for file in files:
            for found in pattern.finditer(file.read_text("utf-8")):
                key = next(g for g in found.groups() if g)
                if key not in has:
                    known.wrong.append(f"{file.relative_to(ROOT)} {what} \"{key}\", which no schema has")
    text = "".join(p.read_text("utf-8") for f in ("lib", "include", "reference") for e in ("*.cpp", "*.hpp", "*.toml")
                   for p in (ROOT / f).rglob(e))
    for key in sorted(known.properties(known.of)):
        if f'"{key}"' not in text and f"{key} = " not in text:
            known.wrong.append(f"a schema has \"{key}\", which the code doesn't know")


def main():
    ask = argparse.ArgumentParser(usage=__doc__)
    ask.add_argument("pelage", type=pathlib.Path)
    ask.add_argument("--all", action="store_true")
    given = ask.parse_args()
    program = given.pelage.resolve()
    known, all_cases = schemas(), list(cases())
    count = 0
    for answers in (net_answers(program, given.all), case_answers(program, all_cases)):
        for where, values in answers:
            for value in values:
                kind = kind_of_json(value)
                known.hold(where, kind, value)
                count += 1
    files = 0
    for where, kind, value in written_files(all_cases):
        known.hold(where, kind, value)
        files += 1
    keys_in_code(known)
    known.wrong += [f"{k}.json: no test has one" for k, n in known.seen.items() if n == 0 and k != "common"]
    print("\n".join(known.wrong[:40]))
    if len(known.wrong) > 40:
        print(f"... and {len(known.wrong) - 40} more")
    print(f"schemas: {len(known.of)}, {count} JSON values and {files} files held against them, {len(known.wrong)} wrong")
    return 1 if known.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
