#!/usr/bin/python3
"""Goal and measured side by side, from the JSON files of Google Benchmark. Usage: check_goals.py GOALS RESULT..."""
import json
import statistics
import sys


def read(files):
    times, results = {}, {}
    for name in files:
        with open(name, encoding="utf-8") as f:
            for row in json.load(f)["benchmarks"]:
                if row.get("run_type") != "iteration":
                    continue
                times.setdefault(row["run_name"], []).append(row["cpu_time"])
                results[row["run_name"]] = row.get("result")
    return {k: statistics.median(v) for k, v in times.items()}, results


def main():
    with open(sys.argv[1], encoding="utf-8") as f:
        goals = json.load(f)
    times, results = read(sys.argv[2:])
    passed = failed = 0
    print("| subject | baseline | goal | measured | stretch | verdict |")
    print("| --- | --- | ---: | ---: | ---: | --- |")
    for g in goals:
        subject, baseline = times.get(g["subject"]), times.get(g["baseline"])
        if subject is None or baseline is None:
            print(f"| {g['subject']} | {g['baseline']} | {g['goal']} | not measured | {g['stretch']} | failed |")
            failed += 1
            continue
        ratio = subject / baseline
        ok = ratio <= g["goal"]
        verdict = "stretch" if ratio <= g["stretch"] else "passed" if ok else "failed"
        if g["same_result"] and results[g["subject"]] != results[g["baseline"]]:
            ok, verdict = False, f"failed: results differ, {results[g['subject']]} and {results[g['baseline']]}"
        passed, failed = passed + ok, failed + (not ok)
        print(f"| {g['subject']} ({subject:.0f} us) | {g['baseline']} ({baseline:.0f} us) | {g['goal']} | {ratio:.4f} | {g['stretch']} | {verdict} |")
    print(f"\n{passed} passed, {failed} failed")
    return 1 if failed else 0


sys.exit(main())
