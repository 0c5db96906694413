package sheets

import (
	"reflect"
	"regexp"
	"testing"

	"bodkin/seams"
)

// One thing has one name, in what the shelf has a maker do and in what the sheets
// say of their own: the word on the left, not those on the right. The choice is the
// house's; the glossary explains it.
func TestTermsAreUsedTheSameWay(t *testing.T) {
	terms := []struct {
		say, not string
	}{
		{"snip", `clip(ped|ping)?`},
		{"allowance", `seam allowances?`},
		{"backstitch", `back-stitch(es)?|back stitch(es)?`},
		{"topstitch", `top-stitch|top stitch`},
		{"edge-stitch", `edgestitch`},
		{"understitch", `under-stitch`},
		{"right sides together", `right sides? facing|right side to right side|face to face with`},
		{"wrong side", `reverse side|back side|inner side of the cloth`},
		{"press", `iron (it|the (seam|edge|hem|allowances?|band))`},
		{"machine needle down", `sink the needle`},
		{"pleat", `plait`},
		{"cloth", `fabrics?`},
		{"secure the ends", `lock the ends|tie off`},
		{"join", `splice`},
	}
	shelf, err := seams.LoadWhole()
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string][]string{}
	for _, c := range shelf.Constructions {
		for _, p := range c.Passes {
			texts[c.Name] = append(texts[c.Name], p.Text, p.Good)
		}
		for _, k := range c.Checks {
			texts[c.Name] = append(texts[c.Name], k.What)
		}
	}
	if len(texts) < 80 {
		t.Fatalf("%d constructions read", len(texts))
	}
	for _, p := range shelf.Pressing {
		texts["pressing "+p.Name] = []string{p.Text, p.Good}
	}
	sentences := 0
	var gather func(reflect.Value)
	gather = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.String:
			sentences++
			texts["wording"] = append(texts["wording"], v.String())
		case reflect.Struct:
			for i := range v.NumField() {
				gather(v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				gather(v.Index(i))
			}
		}
	}
	gather(reflect.ValueOf(english()))
	if sentences < 200 {
		t.Fatalf("%d sentences of the wording read", sentences)
	}
	for _, term := range terms {
		other := regexp.MustCompile(`(?i)\b(` + term.not + `)\b`)
		for where, list := range texts {
			for _, text := range list {
				if found := other.FindString(text); found != "" {
					t.Errorf("%s says %q where %q is the word: %s", where, found, term.say, text)
				}
			}
		}
	}
}
