"""Makes the two fonts of the sheets from the static OpenType files of Inter 4.0: `python make.py Inter-Regular.otf out.otf Regular`."""
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

RANGES = [
    (0x20, 0x7E), (0xA0, 0x17F), (0x2B0, 0x2FF), (0x370, 0x3FF), (0x1D2C, 0x1D6A), (0x1E80, 0x1E85), (0x2000, 0x206F),
    (0x2070, 0x209F), (0x20A0, 0x20BF), (0x2100, 0x214F), (0x2150, 0x218F), (0x2190, 0x21FF), (0x2200, 0x22FF),
    (0x2300, 0x2300), (0x25A0, 0x25FF), (0x2600, 0x2610), (0x26A0, 0x26A0), (0x2713, 0x2717),
]
# Signs that the family lacks, and the sign of the same look that stands in for them.
ALIASES = {0x2300: 0x2205, 0x2610: 0x25A1, 0x25B8: 0x25B6}

source, target, style = sys.argv[1:4]
font = TTFont(source, recalcTimestamp=False)

tabular = {}
gsub = font["GSUB"].table
for record in gsub.FeatureList.FeatureRecord:
    if record.FeatureTag == "tnum":
        for index in record.Feature.LookupListIndex:
            for table in gsub.LookupList.Lookup[index].SubTable:
                tabular.update(getattr(table, "ExtSubTable", table).mapping)
for table in font["cmap"].tables:
    if table.isUnicode():
        for missing, stand_in in ALIASES.items():
            if missing not in table.cmap and stand_in in table.cmap:
                table.cmap[missing] = table.cmap[stand_in]
        for code in range(0x30, 0x3A):
            table.cmap[code] = tabular.get(table.cmap[code], table.cmap[code])

# One figure of the bold is three units narrower than the others.
figures = {font.getBestCmap()[code] for code in range(0x30, 0x3A)}
widest = max(font["hmtx"][g][0] for g in figures)
for g in figures:
    font["hmtx"][g] = (widest, font["hmtx"][g][1])

options = subset.Options()
options.layout_features = ["kern"]
options.hinting = False
options.glyph_names = False
options.notdef_outline = True
options.name_IDs = ["*"]
subsetter = subset.Subsetter(options)
subsetter.populate(unicodes={c for a, b in RANGES for c in range(a, b + 1)})
subsetter.subset(font)

names = {1: "Groundhold Sans", 2: style, 3: f"Groundhold Sans {style}, from Inter 4.0", 4: f"Groundhold Sans {style}",
         6: f"GroundholdSans-{style}", 16: "Groundhold Sans", 17: style}
font["name"].names = [n for n in font["name"].names if n.nameID != 7]
for record in font["name"].names:
    if record.nameID in names:
        record.string = names[record.nameID]
cff = font["CFF "].cff
cff.fontNames = [names[6]]
cff.topDictIndex[0].FullName, cff.topDictIndex[0].FamilyName = names[4], names[1]
font.save(target)
