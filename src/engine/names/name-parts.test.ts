import { describe, expect, it } from "vitest";
import { abbreviatedGenus, nameHtml, nameParts, nameText } from "./name-parts.js";

/** Italic stretches between underscores, so that a case is one line. */
const marked = (...args: Parameters<typeof nameParts>): string =>
  nameParts(...args)
    .map((span) => (span.italic ? `_${span.text}_` : span.text))
    .join("");

describe("a name as it is set", () => {
  const cases: readonly (readonly [string, string])[] = [
    ["Epilobium obscurum", "_Epilobium obscurum_"],
    ["Epilobium obscurum Schreb.", "_Epilobium obscurum_ Schreb."],
    ["Epilobium", "_Epilobium_"],
    ["Epilobium L.", "_Epilobium_ L."],
    ["Epilobium sect. Lysimachion", "_Epilobium_ sect. _Lysimachion_"],
    ["Viola tricolor L. subsp. tricolor", "_Viola tricolor_ L. subsp. _tricolor_"],
    ["Viola tricolor subsp. curtisii (E.Forst.) Syme", "_Viola tricolor_ subsp. _curtisii_ (E.Forst.) Syme"],
    ["Rosa gallica L. var. gallica", "_Rosa gallica_ L. var. _gallica_"],
    ["Polypogon monspeliensis (L.) Desf.", "_Polypogon monspeliensis_ (L.) Desf."],
    ["Torreya californica (Torr.) J.T.Howell", "_Torreya californica_ (Torr.) J.T.Howell"],
    ["Larix decidua (L.) L.", "_Larix decidua_ (L.) L."],
    ["Rubus fruticosus L. agg.", "_Rubus fruticosus_ L. agg."],
    ["Rubus fruticosus agg.", "_Rubus fruticosus_ agg."],
    ["Taraxacum sp.", "_Taraxacum_ sp."],
    ["Taraxacum spp.", "_Taraxacum_ spp."],
    ["Carex sp. nov.", "_Carex_ sp. nov."],
    ["Epilobium tetragonum s.l.", "_Epilobium tetragonum_ s.l."],
    ["Epilobium tetragonum s.str.", "_Epilobium tetragonum_ s.str."],
    ["Lotus tenuis L. ex Benth.", "_Lotus tenuis_ L. ex Benth."],
    ["Aa argyrolepis (Rchb.f.) Rchb.f.", "_Aa argyrolepis_ (Rchb.f.) Rchb.f."],
    ["Aster alpinus Hook. f.", "_Aster alpinus_ Hook. f."],
    ["Aster alpinus f. albus Voss", "_Aster alpinus_ f. _albus_ Voss"],
    ["Aster alpinus L. f. albus Voss", "_Aster alpinus_ L. f. _albus_ Voss"],
    ["Scaevola koenigii d'Urv.", "_Scaevola koenigii_ d'Urv."],
    ["Oenothera lamarckiana de Vries", "_Oenothera lamarckiana_ de Vries"],
    ["Lepidium virginicum L. & Sons et al.", "_Lepidium virginicum_ L. & Sons et al."],
    ["Capsella bursa-pastoris (L.) Medik.", "_Capsella bursa-pastoris_ (L.) Medik."],
    ["Isoëtes lacustris", "_Isoëtes lacustris_"],
    ["Quercus cf. agrifolia", "_Quercus_ cf. _agrifolia_"],
    ["cf. Quercus agrifolia", "cf. _Quercus agrifolia_"],
    ["Quercus agrifolia cf. var. oxyadenia", "_Quercus agrifolia_ cf. var. _oxyadenia_"],
    ["Quercus aff. agrifolia", "_Quercus_ aff. _agrifolia_"],
    ["Epilobium ?obscurum", "_Epilobium_ ?_obscurum_"],
    ["Mentha × smithiana R.A.Graham", "_Mentha_ ×_smithiana_ R.A.Graham"],
    ["Mentha x smithiana", "_Mentha_ ×_smithiana_"],
    ["Mentha ×smithiana", "_Mentha_ ×_smithiana_"],
    ["× Agropogon littoralis", "×_Agropogon littoralis_"],
    ["×Agropogon littoralis", "×_Agropogon littoralis_"],
    ["Salix aurita L. x S. caprea L.", "_Salix aurita_ L. × _S. caprea_ L."],
    ["Salix aurita × Salix caprea", "_Salix aurita_ × _Salix caprea_"],
    ["Epilobium obscurum x ciliatum", "_Epilobium obscurum_ × _ciliatum_"],
    ["Mentha ×piperita nothosubsp. pyramidalis", "_Mentha_ ×_piperita_ nothosubsp. _pyramidalis_"],
    ["Helix auct. non L.", "_Helix_ auct. non L."],
    ["Poa annua sensu Hylander", "_Poa annua_ sensu Hylander"],
    ["", ""],
  ];
  it.each(cases)("%s", (name, expected) => {
    expect(marked(name)).toBe(expected);
  });

  it("puts the authorship after the last epithet, but never after an autonym's", () => {
    expect(marked("Epilobium obscurum", "Schreb.")).toBe("_Epilobium obscurum_ Schreb.");
    expect(marked("Viola tricolor subsp. tricolor", "L.")).toBe("_Viola tricolor_ L. subsp. _tricolor_");
    expect(marked("Viola tricolor subsp. curtisii", "(E.Forst.) Syme")).toBe("_Viola tricolor_ subsp. _curtisii_ (E.Forst.) Syme");
    expect(marked("Epilobium tetragonum agg.", "L.")).toBe("_Epilobium tetragonum_ L. agg.");
    expect(marked("Epilobium obscurum Schreb.", "Schreb.")).toBe("_Epilobium obscurum_ Schreb.");
  });

  it("puts the doubt before the doubtful part", () => {
    expect(marked("Epilobium tetragonum", "", "cf.")).toBe("_Epilobium_ cf. _tetragonum_");
    expect(marked("Epilobium", "", "cf.")).toBe("cf. _Epilobium_");
    expect(marked("Quercus agrifolia var. oxyadenia", "", "cf.")).toBe("_Quercus agrifolia_ cf. var. _oxyadenia_");
    expect(marked("Epilobium obscurum", "Schreb.", "aff.")).toBe("_Epilobium_ aff. _obscurum_ Schreb.");
    expect(marked("Epilobium obscurum × E. ciliatum", "", "?")).toBe("?_Epilobium obscurum_ × _E. ciliatum_");
  });

  it("gives plain text and safe HTML", () => {
    const spans = nameParts("Epilobium obscurum", "<script>alert(1)</script>");
    expect(nameText(nameParts("Mentha x smithiana", "R.A.Graham"))).toBe("Mentha ×smithiana R.A.Graham");
    expect(nameHtml(spans)).toBe('<i lang="la">Epilobium obscurum</i> &lt;script&gt;alert(1)&lt;/script&gt;');
  });
});

describe("abbreviatedGenus", () => {
  it("keeps the initial", () => {
    expect(abbreviatedGenus("Epilobium obscurum")).toBe("E. obscurum");
    expect(abbreviatedGenus("×Agropogon littoralis")).toBe("×A. littoralis");
    expect(abbreviatedGenus("Epilobium")).toBe("Epilobium");
  });
});
