"""Runs the test programs that ctest knows of in one or more build trees and writes one line a test case.

usage: run_programs.py --results FILE --jobs N [--only NAME[:FILTER]] [--timeout S] [--long] TREE=DIR=SCALE...

A line of FILE is "pass|fail|skip <tab> TREE/PROGRAM/CASE <tab> reason". Programs written with GoogleTest count case by
case, others as one. Labels of ctest: `release_only` (not run in the tree "sanitize"), `long_only` (only with --long).
Exit code 2 when a tree cannot be read; failures of tests are in FILE only.
"""
import argparse, concurrent.futures, json, os, subprocess, sys, tempfile, threading, time
import xml.etree.ElementTree as tree

NOT_IN_CI = "skipped: not in CI"
lock = threading.Lock()


def programs(folder):
    shown = subprocess.run(["ctest", "--test-dir", folder, "--show-only=json-v1"], capture_output=True, text=True)
    if shown.returncode != 0:
        sys.exit(2)
    return json.loads(shown.stdout)["tests"]


def properties(test):
    return {p["name"]: p["value"] for p in test.get("properties", [])}


def environment(scale, sanitized, props):
    env = dict(os.environ, SNUG_TEST_SCALE=scale, QT_QPA_PLATFORM="offscreen")
    env["RC_PARAMS"] = "max_success=%d" % (1000 if scale == "full" else 100)
    if sanitized:
        env["ASAN_OPTIONS"] = "detect_stack_use_after_return=1:strict_string_checks=1:allocator_may_return_null=1"
        env["UBSAN_OPTIONS"] = "print_stacktrace=1:halt_on_error=1"
    for pair in props.get("ENVIRONMENT", []):
        key, _, value = pair.partition("=")
        env[key] = value
    return env


def cases(report):
    """(verdict, name, reason) of every case in a GoogleTest XML report."""
    for case in tree.parse(report).getroot().iter("testcase"):
        name = case.get("classname") + "." + case.get("name")
        if case.get("status") == "notrun":
            yield "skip", name, "disabled in the source"
        elif case.find("failure") is not None:
            yield "fail", name, case.find("failure").get("message", "").split("\n")[0]
        elif case.find("skipped") is not None:
            text = [line for line in case.find("skipped").get("message", "").split("\n") if line.strip()]
            yield "skip", name, text[-1].strip() if text else "no reason given"
        else:
            yield "pass", name, ""


def judge(code, output, report, props):
    if os.path.getsize(report) > 0:
        rows = list(cases(report))
        if code != 0 and not any(v == "fail" for v, _, _ in rows):
            rows.append(("fail", "exit", "exit code %d although no case failed" % code))
        return rows
    if "SKIP_RETURN_CODE" in props and code == int(props["SKIP_RETURN_CODE"]):
        lines = [l for l in output.splitlines() if l.strip()]
        return [("skip", "", lines[-1] if lines else "no reason given")]
    wanted = code != 0 if props.get("WILL_FAIL") else code == 0
    return [("pass" if wanted else "fail", "", "" if wanted else "exit code %d" % code)]


def execute(run, args, only_filter):
    name, test, props = run["name"], run["test"], run["props"]
    if "command" not in test:
        return [("fail", "", "the program was not built")], 0.0
    with tempfile.NamedTemporaryFile(suffix=".xml") as report:
        env = environment(run["scale"], run["tree"] == "sanitize", props)
        env["GTEST_OUTPUT"] = "xml:" + report.name
        if only_filter:
            env["GTEST_FILTER"] = only_filter
        start = time.monotonic()
        limit = float(props.get("TIMEOUT", args.timeout))
        try:
            done = subprocess.run(test["command"], cwd=props.get("WORKING_DIRECTORY"), env=env, stdin=subprocess.DEVNULL,
                                  stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=limit)
            code, output = done.returncode, done.stdout.decode("utf-8", "replace")
        except subprocess.TimeoutExpired as late:
            code, output = 124, (late.stdout or b"").decode("utf-8", "replace") + "\nno end after %d s" % limit
        except OSError as error:
            code, output = 127, str(error)
        took = time.monotonic() - start
        rows = judge(code, output, report.name, props)
    if any(v == "fail" for v, _, _ in rows):
        with lock:
            print("---- %s failed; the end of what it said:" % name)
            print("\n".join(output.splitlines()[-120:]))
            print("----", flush=True)
    return rows, took


def finish(run, rows, took, args):
    in_ci = os.environ.get("CI") == "true"
    kinds = {"pass": 0, "fail": 0, "skip": 0}
    with lock, open(args.results, "a", encoding="utf-8") as out:
        for verdict, case, reason in rows:
            full = run["name"] + ("/" + case if case else "")
            if verdict == "skip" and in_ci and not reason.startswith(NOT_IN_CI):
                verdict, reason = "fail", "may not be skipped in CI: " + reason
            kinds[verdict] += 1
            out.write("%s\t%s\t%s\n" % (verdict, full, reason.replace("\t", " ")))
            if verdict != "pass":
                print("%s %s: %s" % ("SKIP" if verdict == "skip" else "FAIL", full, reason))
        print("%-40s %5d passed, %d failed, %d skipped in %.1f s" %
              (run["name"], kinds["pass"], kinds["fail"], kinds["skip"], took), flush=True)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--results", required=True)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--only", default="")
    parser.add_argument("--timeout", type=float, default=900)
    parser.add_argument("--long", action="store_true")
    parser.add_argument("trees", nargs="+")
    args = parser.parse_args()
    only, _, only_filter = args.only.partition(":")
    runs = []
    for item in args.trees:
        name, folder, scale = item.split("=")
        for test in programs(folder):
            props = properties(test)
            labels = props.get("LABELS", [])
            if only and test["name"] != only:
                continue
            if props.get("DISABLED") or (name == "sanitize" and "release_only" in labels):
                continue
            if "long_only" in labels and not args.long:
                continue
            runs.append({"name": name + "/" + test["name"], "tree": name, "scale": scale, "test": test, "props": props})
    with concurrent.futures.ThreadPoolExecutor(args.jobs) as pool:
        alone = [r for r in runs if r["props"].get("RUN_SERIAL")]
        jobs = {pool.submit(execute, r, args, only_filter): r for r in runs if r not in alone}
        for job in concurrent.futures.as_completed(jobs):
            finish(jobs[job], *job.result(), args)
    for run in alone:
        finish(run, *execute(run, args, only_filter), args)


main()
