"""usage: tidy_database.py FROM TO. Copies a compile_commands.json for clang-tidy: without precompiled headers, which are
in the other compiler's format, and without the flags only that compiler knows."""
import json, os, re, sys

with open(sys.argv[1], encoding="utf-8") as f:
    rows = json.load(f)
for row in rows:
    line = re.sub(r"-include \S*cmake_pch\.hxx", "", row["command"])
    row["command"] = re.sub(r" -(Winvalid-pch|Wno-maybe-uninitialized|mno-direct-extern-access)\b", "", line)
rows = [r for r in rows if "cmake_pch" not in r["file"] and "_autogen" not in r["file"]]
os.makedirs(os.path.dirname(sys.argv[2]), exist_ok=True)
with open(sys.argv[2], "w", encoding="utf-8") as f:
    json.dump(rows, f)
