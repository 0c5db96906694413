package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// A cloth that a garment says suits it stands on the shelf, and a new job names it.
func TestUsualCloths(t *testing.T) {
	shelf := loadShelf(t)
	for _, name := range templates.Names() {
		g := garmentOf(t, name)
		job := string(process.StartJob(g, shelf, length.Centimetres))
		for _, r := range g.Roles() {
			if r.Usual == "" {
				continue
			}
			if !slices.ContainsFunc(shelf.Cloths, func(c seams.Cloth) bool { return c.Name == r.Usual }) {
				t.Errorf("%s: no cloth %q on the shelf for %s", name, r.Usual, r.Name)
			}
			if !strings.Contains(job, "  "+r.Name+": {is: "+r.Usual+",") {
				t.Errorf("%s: the new job does not name %s for %s", name, r.Usual, r.Name)
			}
		}
	}
}
