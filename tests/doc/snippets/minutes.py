"""How long each dog of the salon takes, by its plan."""
import json
import pathlib
import subprocess

for file in sorted(pathlib.Path("my-salon/dogs").glob("*.toml")):
    answer = subprocess.run(["pelage", "plan", file.stem, "--format", "json"], capture_output=True, check=False)
    if answer.returncode > 1:  # 0: planned; 1: the answer is no; else something is wrong, and said so
        print(answer.stderr.decode(), end="")
        continue
    plan = json.loads(answer.stdout)
    assert plan["schema"] == "pelage/plan/1"  # another number: read what changed first
    minutes = plan.get("appointment_minutes")  # not there where nothing is planned
    print(plan["dog"]["name"], f"{minutes:.0f} minutes" if minutes else "not planned today")
