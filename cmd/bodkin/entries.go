package main

import (
	"encoding/json"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/spf13/cobra"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/templates"
)

// kinds are what list and show know, and the word that opens an entry of each
// on the shelf.
func kinds() [][2]string {
	return [][2]string{
		{"garments", "garment"}, {"cloth", "cloth"}, {"stitches", "stitch"}, {"seams", "construction"},
		{"machines", "machine"}, {"needles", "needle"}, {"hand-needles", "hand-needle"}, {"thread", "thread"}, {"interfacing", "interfacing"},
		{"stays", "stay"}, {"pressing", "pressing"}, {"tools", "tool"}, {"acts", "act"}, {"cautions", "caution"}, {"sizes", "size"},
	}
}

func kindNames() []string {
	var out []string
	for _, k := range kinds() {
		out = append(out, k[0])
	}
	return out
}

// entriesOf are the entries of a kind, the maker's own over ours.
func entriesOf(cmd *cobra.Command, kind string) ([]seams.Entry, error) {
	set, err := loadSettings(cmd.Flags())
	if err != nil {
		return nil, err
	}
	for _, k := range kinds() {
		if k[0] != kind {
			continue
		}
		switch kind {
		case "garments":
			return garments()
		case "sizes":
			return sizes()
		}
		own, err := ownFiles(set.shelf)
		if err != nil {
			return nil, err
		}
		// Only files that the planner would take are shown.
		if len(own) > 0 {
			if _, err := seams.Load(own...); err != nil {
				return nil, err
			}
		}
		return seams.Entries(k[1], own...)
	}
	return nil, unknown(kind, kindNames(), "kinds are "+strings.Join(kindNames(), ", "), "no kind %q", kind)
}

func garments() ([]seams.Entry, error) {
	var out []seams.Entry
	for _, name := range templates.Names() {
		text, file := templates.Text(name)
		g, err := templates.Parse(file, text)
		if err != nil {
			return nil, err
		}
		out = append(out, seams.Entry{Kind: "garment", Name: g.Name, Title: g.Title, Source: g.Source,
			Place: form.Place{File: file, Line: 1, Column: 1}, Text: string(text)})
	}
	return out, nil
}

// sizes are the named sizes, each with its own text.
func sizes() ([]seams.Entry, error) {
	list, err := templates.Sizes()
	if err != nil {
		return nil, err
	}
	text, file := templates.SizesText()
	blocks := strings.Split(string(text), "\n- size: ")
	var out []seams.Entry
	line := 1 + strings.Count(blocks[0], "\n")
	for k, s := range list {
		line++
		out = append(out, seams.Entry{Kind: "size", Name: s.Name, Title: s.Title, Source: s.Source,
			Place: form.Place{File: file, Line: line, Column: 1}, Text: strings.ReplaceAll("size: "+strings.TrimRight(blocks[k+1], "\n"), "\n  ", "\n") + "\n"})
		line += strings.Count(blocks[k+1], "\n")
	}
	return out, nil
}

// object is an entry as JSON: name, title and source, and the whole entry as it
// stands on the shelf.
type object struct {
	Name   string          `json:"name"`
	Title  string          `json:"title"`
	Source string          `json:"source"`
	Own    bool            `json:"own"` // the maker's own
	Entry  json.RawMessage `json:"entry"`
}

func objects(entries []seams.Entry) ([]object, error) {
	out := []object{}
	for _, e := range entries {
		raw, err := yaml.YAMLToJSON([]byte(e.Text))
		if err != nil {
			return nil, cannot("", "cannot write %s as JSON: %v", e.Name, err)
		}
		out = append(out, object{e.Name, e.Title, e.Source, e.Own, raw})
	}
	return out, nil
}
