package anchor_test

import (
	"testing"

	"bodkin/sheets/pdf/anchor"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
)

var _ parser.IDs = (*anchor.IDs)(nil)

func TestOf(t *testing.T) {
	for text, want := range map[string]string{
		"Seams at a glance":       "seams-at-a-glance",
		"  Step 3: press!  ":      "step-3-press",
		"Đường may":               "đường-may",
		"Ẹ̀yà aṣọ":                "ẹ̀yà-aṣọ",
		"縫い":                      "縫い",
		"a_b-c":                   "a_b-c",
		"***":                     "section",
		"e\u0301":                 "é",
		"Cut (main cloth) ½ yard": "cut-main-cloth--yard",
	} {
		if got := anchor.Of(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestRepeatedHeadingsDiffer(t *testing.T) {
	ids := anchor.New()
	ids.Put([]byte("press-3"))
	want := []string{"press", "press-2", "press-4", "hem"}
	for i, text := range []string{"Press", "press", "Press!", "Hem"} {
		if got := string(ids.Generate([]byte(text), ast.KindHeading)); got != want[i] {
			t.Errorf("%d: %q, want %q", i, got, want[i])
		}
	}
}
