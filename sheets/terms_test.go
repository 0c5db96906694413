package sheets

import (
	"reflect"
	"regexp"
	"slices"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// terms are the words for things: the word on the left, not those on the right,
// and why. The choice is the house's; the glossary explains it.
var terms = []struct {
	say, not, because string
}{
	{"snip", `clip(ped|ping)?|(the|without) clips`, "clips hold cloth where pins would mark it, so that to clip would be two things"},
	{"allowance", `seam allowances?`, "there is no other allowance at a seam, and the shorter word is read at the machine"},
	{"backstitch", `back-stitch(es)?|back stitch(es)?`, "one spelling"},
	{"topstitch", `top-stitch|top stitch`, "one spelling"},
	{"edge-stitch", `edgestitch`, "one spelling"},
	{"understitch", `under-stitch`, "one spelling"},
	{"staystitch", `stay-stitch(ing)?|stay stitch(ing)?`, "one spelling"},
	{"right sides together", `right sides? facing|right side to right side|face to face with`, "it says how two plies lie, and is the reverse of wrong sides together"},
	{"wrong side", `reverse side|back side|inner side of the cloth|left side of the cloth`, "the other side of the right side"},
	{"raw edge", `cut edges?`, "cut or torn, it is what frays and what is measured from; one word for it"},
	{"row", `lines? of stitch(es|ing)|stitching lines?|seams? of stitching`, "a line is what is drawn or thought, as the seam line; a row is what is sewn"},
	{"ply", `layers? of (the )?seam|(inner|outer|upper|under|same|thick|several|both|two|three|four|all) layers|through all layers`, "a ply is one thickness in a seam; cloth is spread in layers for cutting"},
	{"fold", `crease (the edge|the hem|it with|along)|folded crease`, "a fold stays in the work; a crease is what is left of one that was opened again, or the fold of trousers"},
	{"press", `iron (it|the (seam|edge|hem|allowances?|band))`, "to press is to lift and lower (A. W. Koester, Pressing, Oregon State Univ. Extension)"},
	{"machine needle down", `sink the needle`, "plain words"},
	{"pleat", `plait`, "one spelling"},
	{"cloth", `fabrics?`, "one word for what is sewn"},
	{"secure the ends", `lock the ends|tie off`, "by whatever way the machine has"},
	{"join", `splice`, "strips are joined as pieces are"},
	{"overlock", `serge[drs]?|serging`, "one word for it on both sides of the ocean"},
	{"overcast", `whip-?stitch(ed)?|oversew(n)?`, "the hand stitch that goes round an edge"},
	{"baste", `tack (the hem|the seam|the edges? together)|basting tacks`, "basting comes out again; a tack stays"},
	{"notch", `balance marks?|nicks? in the edge`, "one word for the marks that meet"},
	{"zip", `zippers?|slide fasteners?`, "one word for it on both sides of the ocean"},
	{"waist edge", `waist line edge`, "one name for it"},
}

// unread are fields whose words are not ours to choose (sources, and what each says
// that they differ in) or are not read as
// sentences: titles of books, names, formulas.
var unread = []string{"Source", "RatioSource", "TexSource", "Name", "At", "Formula", "StretchSource", "WeightSource", "Basis", "Does", "Says"}

// texts are all words of a value, by the type that holds them.
func texts(v reflect.Value, where string, put func(where, text string)) {
	switch v.Kind() {
	case reflect.String:
		if v.Type() == reflect.TypeFor[form.Text]() {
			return
		}
		put(where, v.String())
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[form.Text]() || v.Type() == reflect.TypeFor[form.Place]() {
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if !slices.Contains(unread, f.Name) {
				texts(v.Field(i), where, put)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			at := where
			if e := reflect.Indirect(v.Index(i)); e.Kind() == reflect.Struct && e.FieldByName("Name").Kind() == reflect.String {
				at = where + " " + e.FieldByName("Name").String()
			}
			texts(v.Index(i), at, put)
		}
	}
}

// One thing has one name, in all that the shelf and the garments say and in what
// the sheets say of their own.
func TestTermsAreUsedTheSameWay(t *testing.T) {
	shelf, err := seams.LoadWhole()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]int{}
	read := map[string][]*regexp.Regexp{}
	for _, term := range terms {
		if term.because == "" {
			t.Errorf("%s has no reason", term.say)
		}
		read[term.say] = append(read[term.say], regexp.MustCompile(`(?i)\b(`+term.not+`)\b`))
	}
	look := func(of string) func(where, text string) {
		return func(where, text string) {
			found[of]++
			for say, list := range read {
				for _, other := range list {
					if word := other.FindString(text); word != "" {
						t.Errorf("%s says %q where %q is the word: %s", where, word, say, text)
					}
				}
			}
		}
	}
	texts(reflect.ValueOf(*shelf), "shelf", look("shelf"))
	texts(reflect.ValueOf(english()), "wording", look("wording"))
	explained, err := readTerms()
	if err != nil {
		t.Fatal(err)
	}
	for _, term := range explained {
		look("glossary")(term.Term, term.Means)
	}
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		texts(reflect.ValueOf(*g), name, look("garments"))
	}
	for of, least := range map[string]int{"shelf": 6000, "wording": 200, "glossary": 25, "garments": 1000} {
		if found[of] < least {
			t.Errorf("%d texts of the %s read", found[of], of)
		}
	}
}

// The words that are not used are found where they stand: sentences of our own.
func TestTermsBite(t *testing.T) {
	for say, text := range map[string]string{
		"snip": "Clip the curve.", "raw edge": "Stitch it from the cut edges.", "row": "the stitching line from the edge", "ply": "through all layers",
		"fold": "crease the edge with the fingers", "overlock": "serge the edge", "allowance": "Trim the seam allowance.", "zip": "Close the zipper.",
	} {
		k := slices.IndexFunc(terms, func(term struct{ say, not, because string }) bool { return term.say == say })
		if k < 0 || !regexp.MustCompile(`(?i)\b(`+terms[k].not+`)\b`).MatchString(text) {
			t.Errorf("%s is not seen in %q", say, text)
		}
	}
}
