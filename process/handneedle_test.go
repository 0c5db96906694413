package process_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"bodkin/process"
)

// Whatever is stitched by hand names the kind and size of its needle, as it is on
// the packet; a step has one needle, and the plan says what each is for. Which
// needle, the shelf's own test checks.
func TestHandWorkNamesItsNeedle(t *testing.T) {
	packet := regexp.MustCompile(`^(sharps|betweens|milliner's|ballpoint|glover's) ([1-9]|1[0-2])$`)
	for _, tt := range []struct{ cloth, sewing string }{
		{"silk-georgette", "sharps 10"}, {"wool-coating", "betweens 7"}, {"cotton-jersey", "ballpoint 9"},
	} {
		p := sewn(t, tt.cloth, "hem", "hand-hemmed", "straight-stitcher")
		needle := map[string]string{} // by operation
		by := map[string]bool{}
		for _, o := range p.Operations {
			needle[o.ID] = o.Setting.Needle
			k := slices.IndexFunc(p.Stations, func(s process.Station) bool { return s.Name == o.Station })
			if p.Stations[k].Kind != "hand" || o.Setting.Stitch == "" {
				continue
			}
			by[o.Setting.Needle] = true
			if !packet.MatchString(o.Setting.Needle) || (o.Does == "baste") != strings.HasPrefix(o.Setting.Needle, "milliner's") {
				t.Errorf("%s: %s, %s, has needle %q", tt.cloth, o.ID, o.Does, o.Setting.Needle)
			}
			if !slices.ContainsFunc(p.Needles, func(u process.NeedleUse) bool { return u.Needle == o.Setting.Needle && u.Source != "" }) {
				t.Errorf("%s: %s is not in the needle plan", tt.cloth, o.Setting.Needle)
			}
		}
		if !by[tt.sewing] {
			t.Errorf("%s is sewn by hand with %v, want %s", tt.cloth, by, tt.sewing)
		}
		for _, s := range p.Steps {
			for _, id := range s.Operations {
				if n := needle[id]; n != "" && n != s.Setting.Needle {
					t.Errorf("%s: step %d has %q, its %s %q", tt.cloth, s.Number, s.Setting.Needle, id, n)
				}
			}
		}
	}
}
