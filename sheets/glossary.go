package sheets

import (
	_ "embed"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml"
)

//go:embed glossary.yaml
var glossaryFile []byte

// term is a word of the trade with what it means.
type term struct {
	Term   string   `yaml:"term"`
	Forms  []string `yaml:"forms"`
	Means  string   `yaml:"means"`
	Source string   `yaml:"source"`
}

// readTerms are the terms of the glossary, in its order, which is that of the
// alphabet.
func readTerms() ([]term, error) {
	var terms []term
	err := yaml.UnmarshalWithOptions(glossaryFile, &terms, yaml.Strict())
	return terms, err
}

// glossary explains those terms that the sheet uses, and no others.
func (c *composer) glossary() {
	terms, err := readTerms()
	if err != nil {
		panic("sheets: glossary.yaml: " + err.Error()) // it is embedded, and a test reads it
	}
	text := wordsOf(c.out.String())
	var items []inline
	for _, t := range terms {
		if t.in(text) {
			items = append(items, say(c.say.class.term, values{"term": strong(plain(upper(t.Term))), "means": plain(sentence(t.Means))}))
		}
	}
	if len(items) > 0 {
		c.heading(2, plain(c.say.class.glossary))
		c.list(items...)
	}
}

// wordsOf is a text as small words with single spaces round each.
func wordsOf(text string) string {
	return " " + strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) }), " ") + " "
}

// in tells whether a text of wordsOf uses the term in any of its forms.
func (t term) in(text string) bool {
	for _, form := range append([]string{t.Term}, t.Forms...) {
		if strings.Contains(text, wordsOf(form)) {
			return true
		}
	}
	return false
}
