"""Measures start-up: from the start of the process to its end after the first paint, alternating.

usage: start_up.py PROGRAM TIMES OUT.json. The processor time of each process is what is compared; "result" is its exit
code. The file has the form of Google Benchmark's, for check_goals.py.
"""
import json, os, resource, subprocess, sys, time


def run(program, word):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    started = time.monotonic()
    code = subprocess.run([program, word], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=60).returncode
    wall = time.monotonic() - started
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return {"run_type": "iteration", "time_unit": "us", "cpu_time": used * 1e6, "real_time": wall * 1e6, "result": code}


def main():
    program, times, out = sys.argv[1], int(sys.argv[2]), sys.argv[3]
    rows = []
    for word in ("lab", "plain"):
        run(program, word)  # libraries and fonts are in memory then, for both
    for _ in range(times):
        for word in ("lab", "plain"):
            name = "start/" + ("subject" if word == "lab" else "plain")
            rows.append({"name": name, "run_name": name, **run(program, word)})
    with open(out, "w") as file:
        json.dump({"context": {"platform": os.uname().machine}, "benchmarks": rows}, file)


main()
