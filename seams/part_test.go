package seams_test

import (
	"testing"

	"bodkin/seams"
)

// Facings, plackets, cuffs, collars, waistbands, hems, button and buttonhole
// areas are interfaced: common practice, no source.
func TestPartOf(t *testing.T) {
	s := load(t)
	made := map[string]string{}
	for _, c := range s.Constructions {
		made[c.Kind] = seams.PartOf(c.Kind)
	}
	for kind, want := range map[string]string{
		"facing": "facing", "placket": "placket", "cuff": "cuff", "shirt-collar": "collar", "flat-collar": "collar", "stand-collar": "stand",
		"waistband": "waistband", "band": "band", "front-band": "band", "hem": "hem", "button": "buttonhole", "buttonhole": "buttonhole",
		"patch-pocket": "pocket-mouth", "slanted-pocket": "pocket-mouth", "in-seam-pocket": "pocket-mouth",
		"seam": "", "dart": "", "zip": "",
	} {
		if got, ok := made[kind]; !ok || got != want {
			t.Errorf("%s makes the part %q, on the shelf %v; want %q", kind, got, ok, want)
		}
	}
}

// One cloth may be steadied with several kinds in one garment: Interfacings,
// EM014, Washington State Univ. Extension. Which part wants which stands beside
// each row.
func TestInterfacingOfParts(t *testing.T) {
	s := load(t)
	for _, c := range []struct{ cloth, part, want, source string }{
		{"cotton-poplin", "collar", "light-woven-fusible", "from memory"},
		{"cotton-poplin", "stand", "light-woven-fusible", "from memory"},
		{"cotton-poplin", "cuff", "light-woven-fusible", "from memory"},
		{"cotton-poplin", "band", "light-woven-fusible", "from memory"},
		{"cotton-poplin", "placket", "light-woven-fusible", "common practice, no source"},
		{"cotton-jersey", "band", "fusible-knit", "from memory"},
		{"wool-coating", "", "hair-canvas", "from memory"},
		{"wool-coating", "collar", "hair-canvas", "common practice, no source"},
		{"wool-coating", "facing", "hair-canvas", "common practice, no source"},
		{"wool-coating", "hem", "medium-sew-in", "coat hems interfaced: How Deep Is That Hem, American Sewing Guild; the bias strip: common practice, no source"},
		{"denim", "hem", "medium-sew-in", "the same"},
		{"silk-georgette", "buttonhole", "self-fabric", "matched to the cloth: Complete photo guide to sewing"},
		{"cotton-lawn", "buttonhole", "self-fabric", "the same, and feather-weight or self for lawn: from memory"},
		{"silk-crepe-de-chine", "collar", "silk-organza", "from memory"},
	} {
		verdicts, err := s.WeighInterfacings(seams.Facts{Cloth: clothFacts(t, s, c.cloth), Part: seams.PartFacts{Name: c.part}, Workroom: roomWithIron()})
		if err != nil || !verdicts[0].Allowed() || verdicts[0].Interfacing.Name != c.want {
			t.Errorf("%s, %q: %s for %v, %v; want %s (%s)", c.cloth, c.part, verdicts[0].Interfacing.Name, verdicts[0].For, err, c.want, c.source)
		}
	}
}
