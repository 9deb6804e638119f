"""Says what share of lines and branches the tests pass, file by file from the worst, and names the lines none passes.

  python3 tests/coverage/tell.py SUMMARY.json LINES.info

tests/coverage/unreached.txt explains lines that no test can or should pass: "FILE | the line's text | the reason"."""
import json
import pathlib
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
LINES = 98.0  # per cent, issue 18
BRANCHES = 88.0


def explained():
    said = ROOT / "tests" / "coverage" / "unreached.txt"
    rows = said.read_text().split("\n") if said.exists() else []
    return {tuple(r.split(" | ")[:2]) for r in rows if r and not r.startswith("#")}


def unreached(lcov):
    """(file, line number) of every line that is code and was never passed."""
    name, seen = None, {}
    for row in lcov.split("\n"):
        if row.startswith("SF:"):
            name = str(pathlib.Path(row[3:]).resolve().relative_to(ROOT))
        elif row.startswith("DA:"):
            line, count = row[3:].split(",")[:2]
            key = (name, int(line))
            seen[key] = seen.get(key, 0) + int(count)
    return sorted(k for k, count in seen.items() if count == 0), seen


def main():
    summary = json.loads(pathlib.Path(sys.argv[1]).read_text())["data"][0]
    missed, seen = unreached(pathlib.Path(sys.argv[2]).read_text())
    by_file = {}
    for (name, _), count in seen.items():
        by_file.setdefault(name, [0, 0])[0 if count else 1] += 1
    worst = sorted(by_file.items(), key=lambda f: f[1][0] / sum(f[1]))
    for name, (hit, not_hit) in worst[:25]:
        if not_hit:
            print(f"{100.0 * hit / (hit + not_hit):6.1f} %  {not_hit:4d} not passed  {name}")
    known = explained()
    text = {}
    left = 0
    for name, line in missed:
        if name not in text:
            text[name] = (ROOT / name).read_text().split("\n")
        said = text[name][line - 1].strip()
        if said.strip("{}();") and (name, said) not in known:
            print(f"{name}:{line}: {said}")
            left += 1
    lines = 100.0 * (len(seen) - len(missed)) / len(seen)
    branches = summary["totals"]["branches"]
    print(f"lines {lines:.2f} % of {len(seen)} (at least {LINES} wanted), branches {branches['percent']:.2f} % of "
          f"{branches['count']} (at least {BRANCHES}); {left} lines not passed and not explained")
    return 0 if lines >= LINES and branches["percent"] >= BRANCHES and left == 0 else 1


if __name__ == "__main__":
    sys.exit(main())
