"""Writes the advances of both fonts as the table of `draw`: `python table.py > ../../draw/src/advances.rs`."""
import textwrap

from fontTools.ttLib import TTFont

fonts = [TTFont(f"GroundholdSans-{style}.otf") for style in ("Regular", "Bold")]
maps = [font.getBestCmap() for font in fonts]
assert maps[0].keys() == maps[1].keys() and all(font["head"].unitsPerEm == 2816 for font in fonts)
runs = []
for code in sorted(maps[0]):
    pair = tuple(font["hmtx"][cmap[code]][0] for font, cmap in zip(fonts, maps))
    if runs and code == runs[-1][0] + len(runs[-1][1]):
        runs[-1][1].append(pair)
    else:
        runs.append((code, [pair]))
print("//! How far does each letter of the two fonts advance? Made by `crates/paper/fonts/table.py`; a test of `paper` holds it to the fonts.")
print()
print("/// Units of the em in which advances are given.")
print("pub(crate) const EM: f64 = 2816.0;")
print()
print("/// Runs of letters: the first of them, and the advance of each, regular and bold.")
print("#[rustfmt::skip]")
print("pub(crate) const RUNS: &[(u32, &[(u16, u16)])] = &[")
for first, pairs in runs:
    lines = textwrap.wrap(" ".join(f"({a},\u00a0{b})," for a, b in pairs), 108)
    text = lines[0][:-1] if len(lines) == 1 else "\n" + "".join(f"        {line}\n" for line in lines) + "    "
    print(f"    (0x{first:X}, &[{text}]),".replace("\u00a0", " "))
print("];")
