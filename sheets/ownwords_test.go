package sheets

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"bodkin/seams/form"
)

// Every sentence of the wording has a name of its own, by which it can be said
// another way; nothing in the wording is of a kind that names pass over.
func TestEverySentenceHasAName(t *testing.T) {
	w := english()
	names, places := map[string]bool{}, map[*string]bool{}
	for _, s := range w.sentences() {
		if *s.text == "" {
			t.Errorf("%s says nothing", s.name)
		}
		names[s.name], places[s.text] = true, true
		*s.text = ""
	}
	if len(names) != len(places) {
		t.Errorf("%d names of %d sentences", len(names), len(places))
	}
	if w != (wording{}) {
		t.Error("the wording has something without a name")
	}
}

// The wording written out and read again is the same wording.
func TestWordingReadsItself(t *testing.T) {
	text := English().YAML()
	blank := &Wording{english()}
	for _, s := range blank.say.sentences() {
		values := valuesIn(*s.text)
		*s.text = ""
		for _, v := range values {
			*s.text += "{" + v + "}"
		}
	}
	got, err := blank.With("words.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	if got.say != english() {
		t.Error("the wording differs from what was written")
	}
}

// A sentence of the maker's own stands on the sheet, with its values in the
// reader's units and whatever it holds as text; the rest stays.
func TestOwnWords(t *testing.T) {
	own, err := English().With("words.yaml", []byte(`
layout:
  title: "Set out <b>first</b>"
steps:
  within: "{what} – {tolerance} either way of {expect}."
`))
	if err != nil {
		t.Fatal(err)
	}
	p := fixture(t, "shell-top")
	for _, units := range []string{"cm", "in"} {
		before := string(Compose(p, Options{Units: units}).Markdown)
		after := string(Compose(p, Options{Units: units, Wording: own}).Markdown)
		if before == after || !strings.Contains(after, `## Set out \<b>first\</b>`) {
			t.Errorf("%s: the title is not as it was asked for", units)
		}
		k := p.Checks[0]
		c := newComposer(p, Options{Units: units})
		want := string(c.mm(k.Tolerance)) + " either way of " + string(c.mm(k.Expect)) + "."
		if !strings.Contains(strings.Join(strings.Fields(after), " "), want) {
			t.Errorf("%s: no check says %q", units, want)
		}
		if got := Compose(p, Options{Units: units, Wording: English()}).Markdown; string(got) != before {
			t.Errorf("%s: English is not the usual wording", units)
		}
	}
}

func TestFaultsOfOwnWords(t *testing.T) {
	for _, tt := range []struct{ name, text, at, message, nearest string }{
		{"unknown group", "layuot:\n  title: A\n", "words.yaml:1:1", `no sentence of the sheets is called "layuot"`, "layout"},
		{"unknown sentence", "layout:\n  titel: A\n", "words.yaml:2:3", `no sentence of the sheets is called "layout.titel"`, "title"},
		{"unknown value", "steps:\n  within: \"x {what} {expct}\"\n", "words.yaml:2:21", "steps.within has no value {expct}", "expect"},
		{"open brace", "steps:\n  within: 'x {what'\n", "words.yaml:2:14", "a { without its }", ""},
		{"a list for a sentence", "layout:\n  title: [a]\n", "words.yaml:2:10", "layout.title is one sentence", ""},
		{"a sentence for a group", "layout: A\n", "words.yaml:1:9", "this is no group of sentences", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			w, err := English().With("words.yaml", []byte(tt.text))
			var faults form.Faults
			if !errors.As(err, &faults) || w != nil || len(faults) != 1 {
				t.Fatalf("got %v", err)
			}
			f := faults[0]
			if f.Place.String() != tt.at || f.Message != tt.message || f.Nearest != tt.nearest || f.Mend == "" {
				t.Errorf("got %v", f)
			}
		})
	}
	if !bytes.Contains(English().YAML(), []byte("layout:\n  title: \"What to lay out\"\n")) {
		t.Error("the wording is not written as it is read")
	}
}
