"""Rules of PDF/A-3u and of our tags that can be seen in a file's objects. Not a validator: what it does not look at it does not prove. Prints each rule that is broken."""

import re
import sys

import pikepdf

path = sys.argv[1]
broken = set()


def demand(holds, rule):
    if not holds:
        broken.add(rule)


def elements(node, path=()):
    """Every structure element with the types above it."""
    kind = str(node.get("/S", "/Root"))
    yield node, path
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            yield from elements(kid, (*path, kind))


with open(path, "rb") as file:
    demand(re.match(rb"%PDF-1\.7\n%[\x80-\xff]{4}\n", file.read(64)), "header")
pdf = pikepdf.open(path)
root = pdf.Root
demand("/ID" in pdf.trailer and len(pdf.trailer.ID) == 2, "file id")
demand("/Encrypt" not in pdf.trailer, "no encryption")

demand("/Filter" not in root.Metadata, "metadata is not packed")
xmp = bytes(root.Metadata.read_bytes()).decode("utf-8")
demand(re.search(r"<pdfaid:part>3<", xmp) and re.search(r"<pdfaid:conformance>U<", xmp), "metadata says PDF/A-3u")
demand(re.search(r"<pdfuaid:part>1<", xmp), "metadata says PDF/UA-1")
demand("pdfaExtension:schemas" in xmp, "the name of PDF/UA is explained")
for key, tag in {"/Title": "dc:title", "/Author": "dc:creator", "/Subject": "dc:description", "/Producer": "pdf:Producer"}.items():
    value = str(pdf.docinfo[key]).replace("&", "&#38;").replace("<", "&#60;").replace(">", "&#62;")
    demand(re.search(rf"<{tag}>.*{re.escape(value)}.*</{tag}>", xmp, re.S), f"{key} is the same in the metadata")

intents = [one for one in root.OutputIntents if one.S == "/GTS_PDFA1"]
demand(len(intents) == 1 and int(intents[0].DestOutputProfile.N) == 3, "one output intent")
demand(bytes(intents[0].DestOutputProfile.read_bytes())[36:40] == b"acsp", "a colour profile")
for key in ("/OpenAction", "/AA"):
    demand(key not in root, f"no {key}")

for thing in pdf.objects:
    if isinstance(thing, pikepdf.Stream):
        filters = thing.get("/Filter", [])
        names = [str(one) for one in filters] if isinstance(filters, pikepdf.Array) else [str(filters)]
        demand("/LZWDecode" not in names, "no LZW")
        demand("/F" not in thing, "no stream elsewhere")
        if thing.get("/Subtype") == "/Image":
            demand(thing.get("/ColorSpace") in ("/DeviceRGB", "/DeviceGray"), "colours of images")
            demand(not thing.get("/Interpolate", False) and "/SMask" not in thing, "images without interpolation or masks")
        if thing.get("/Type") == "/EmbeddedFile":
            demand("/" in str(thing.get("/Subtype", ""))[1:], "media type of attachments")
            demand("/ModDate" in thing.get("/Params", {}) and "/Size" in thing.Params, "date and size of attachments")
    elif isinstance(thing, pikepdf.Dictionary):
        kind = thing.get("/Type")
        if kind == "/Filespec":
            demand(all(key in thing for key in ("/F", "/UF", "/EF", "/Desc", "/AFRelationship")), "keys of attachments")
        if kind == "/Font" and thing.get("/Subtype") in ("/Type1", "/TrueType"):
            demand("/FontDescriptor" in thing, "typefaces are embedded")
        if thing.get("/Subtype") == "/CIDFontType2":
            demand("/CIDToGIDMap" in thing and "/FontFile2" in thing.FontDescriptor, "typefaces are embedded")
        if thing.get("/Subtype") == "/Type0":
            demand("/ToUnicode" in thing, "text has its characters (U)")
        if kind == "/Annot":
            flags = int(thing.get("/F", 0))
            demand(flags & 4 and not flags & 0b100011, "annotations are printed and not hidden")
            demand("/AP" in thing or list(thing.Rect) == [0, 0, 0, 0], "annotations have an appearance or no size")
            demand("/StructParent" in thing and "/TU" in thing, "the field is spoken")
        if kind == "/ExtGState":
            demand("/SMask" not in thing and thing.get("/CA", 1) == 1 and thing.get("/ca", 1) == 1, "no transparency")
        if kind == "/Page":
            demand("/Group" not in thing and thing.get("/Tabs") == "/S" and "/StructParents" in thing, "pages")
        demand(thing.get("/S") not in ("/JavaScript", "/Launch", "/Sound", "/Movie", "/ResetForm", "/ImportData"), "no action")

tree = root.Names.EmbeddedFiles
demand("/Kids" not in tree, "one leaf of names")
names = [str(tree.Names[at]) for at in range(0, len(tree.Names), 2)]
demand(names == sorted(names) and len(names) == 6, "names of attachments in order")
demand([one.objgen for one in root.AF] == [tree.Names[at].objgen for at in range(1, len(tree.Names), 2)], "associated files")
demand(int(root.AcroForm.SigFlags) == 3 and "/NeedAppearances" not in root.AcroForm and "/XFA" not in root.AcroForm, "the form")

demand(root.MarkInfo.Marked and "/Lang" in root and root.ViewerPreferences.DisplayDocTitle, "marked, with a language and a title")
spoken = list(elements(root.StructTreeRoot.K))
level = 0
for node, above in spoken:
    kind = str(node.S)
    if re.fullmatch(r"/H[1-6]", kind):
        demand(int(kind[2]) <= level + 1, "headings go down one step at a time")
        level = int(kind[2])
    if kind == "/Figure":
        demand(len(str(node.get("/Alt", ""))) > 3, "figures are described")
    if kind == "/TH":
        demand(str(node.A.Scope) in ("/Column", "/Row"), "heads have a scope")
    if kind in ("/TD", "/TH"):
        demand(above[-1] == "/TR" and above[-2] == "/Table", "cells stand in rows of tables")
    if kind == "/Table":
        widths = {len(row.K) if isinstance(row.K, pikepdf.Array) else 1 for row in (node.K if isinstance(node.K, pikepdf.Array) else [node.K])}
        demand(len(widths) == 1, "rows of a table are equally long")
counted = {}
for node, _ in spoken:
    counted[str(node.S)] = counted.get(str(node.S), 0) + 1
for kind in ("/H1", "/H2", "/P", "/Table", "/TR", "/TH", "/TD", "/Figure", "/Form"):
    demand(counted.get(kind, 0) > 0, f"there is some {kind}")

parents = dict(zip([int(one) for one in list(root.StructTreeRoot.ParentTree.Nums)[::2]], list(root.StructTreeRoot.ParentTree.Nums)[1::2]))
for page in pdf.pages:
    content = b"".join(stream.read_bytes() for stream in ([page.Contents] if isinstance(page.Contents, pikepdf.Stream) else page.Contents))
    marks = [int(one) for one in re.findall(rb"/MCID (\d+)>> BDC", content)]
    demand(marks == list(range(len(parents[int(page.StructParents)]))), "every mark of a page has its element")
    demand(len(re.findall(rb" BDC\n|/Artifact BMC", content)) == len(re.findall(rb"\bEMC\b", content)), "marks are closed")
    outside = re.sub(rb"(/\w+ <</MCID \d+>> BDC|/Artifact BMC).*?\bEMC\b", b"", content, flags=re.S)
    demand(outside.strip() == b"", "nothing is drawn outside a mark")

for rule in sorted(broken):
    print(rule)
sys.exit(1 if broken else 0)
