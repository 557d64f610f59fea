"""Full case folding (Unicode, statuses C and F) as the C# table src/ScreenStats.Records/Deidentification/Pseudonyms/CaseFoldingData.cs.

Run with Python 3: python3 case-folding.py > CaseFoldingData.cs. The values are those of str.casefold, from the Unicode
version that is printed into the table. Mappings never change for a character once it has one (Unicode stability policy).
"""
import sys
import unicodedata

single, several = [], []
for point in range(sys.maxunicode + 1):
    if 0xD800 <= point <= 0xDFFF:
        continue
    folded = chr(point).casefold()
    if folded == chr(point):
        continue
    if len(folded) == 1:
        single.append((point, ord(folded) - point))
    else:
        several.append((point, folded))

ranges = []
for point, delta in single:
    if ranges and ranges[-1][3] == delta:
        first, last, step, _ = ranges[-1]
        if first == last and point - last <= 2:
            ranges[-1] = (first, point, point - last, delta)
            continue
        if first != last and point - last == step:
            ranges[-1] = (first, point, step, delta)
            continue
    ranges.append((point, point, 1, delta))

print("namespace ScreenStats.Records.Deidentification.Pseudonyms;")
print()
print(f"/// <summary>Full case folding of Unicode {unicodedata.unidata_version}, made by tests/reference/generators/case-folding.py.</summary>")
print("internal static class CaseFoldingData")
print("{")
print("    /// <summary>First and last code point, step between them, and what is added: characters that fold to one character.</summary>")
print("    public static readonly (int First, int Last, int Step, int Add)[] Single =")
print("    [")
line = "        "
for item in ranges:
    text = "(0x%X, 0x%X, %d, %d), " % item
    if len(line) + len(text) > 150:
        print(line.rstrip())
        line = "        "
    line += text
print(line.rstrip())
print("    ];")
print()
print("    /// <summary>Characters that fold to two or three.</summary>")
print("    public static readonly (int From, string To)[] Several =")
print("    [")
line = "        "
for point, folded in several:
    text = '(0x%X, "%s"), ' % (point, "".join("\\u%04X" % ord(c) for c in folded))
    if len(line) + len(text) > 150:
        print(line.rstrip())
        line = "        "
    line += text
print(line.rstrip())
print("    ];")
print("}")
