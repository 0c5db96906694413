package seams_test

import (
	"errors"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
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

// TestWordsOfParts: the words that rules may use are those of the parts.
func TestWordsOfParts(t *testing.T) {
	field, _ := reflect.TypeFor[seams.PartFacts]().FieldByName("Name")
	words := strings.Fields(field.Tag.Get("words"))
	have := map[string]bool{}
	for _, kind := range []string{"band", "front-band", "button", "buttonhole", "shirt-collar", "flat-collar", "stand-collar", "cuff", "facing", "hem",
		"placket", "patch-pocket", "slanted-pocket", "in-seam-pocket", "waistband"} {
		have[seams.PartOf(kind)] = true
	}
	if got := slices.Sorted(maps.Keys(have)); !slices.Equal(got, words) {
		t.Errorf("parts are %v, words for them %v", got, words)
	}
}

// TestMisspeltPart: a rule that asks for a part there never is would never hold.
func TestMisspeltPart(t *testing.T) {
	own := `- interfacing: mine
  title: Mine
  weight: 40
  width: 900
  ruled_out: []
  speaks_for:
    - {when: "cloth.woven && part.name in ['collar', 'buttonhle']", worth: 2, because: "it is crisp"}
  attach: Baste it on.
  trim: It stays.
  source: invented
`
	_, err := seams.Load(seams.File{Name: "own.yaml", Data: []byte(own)})
	f, ok := errors.AsType[form.Faults](err)
	if !ok || f[0].Line != 7 || f[0].Column != 54 || f[0].Nearest != "buttonhole" || !strings.Contains(f[0].Message, `part.name is never "buttonhle"`) {
		t.Errorf("error %v", err)
	}
}
