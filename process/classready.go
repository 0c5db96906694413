package process

import (
	"cmp"
	"slices"
	"strings"
)

// Preparation is something to have ready before a session begins.
type Preparation struct {
	Kind     string   `json:"kind"`      // needle, foot, heat, interfacing, notion
	Place    string   `json:"place"`     // title of the machine or iron; empty where it is none
	What     string   `json:"what"`      // empty of heat
	HeatDots int      `json:"heat_dots"` // of heat alone
	Students []string `json:"students"`
}

// preparations are what a session's numbers ask for besides thread, which
// [Threading] tells: by kind, then by place in the order in which they are first met.
func (t *teacher) preparations(c lesson) []Preparation {
	out := []Preparation{}
	add := func(student string, p Preparation) {
		k := slices.IndexFunc(out, func(o Preparation) bool {
			return o.Kind == p.Kind && o.Place == p.Place && o.What == p.What && o.HeatDots == p.HeatDots
		})
		if k < 0 {
			k = len(out)
			out = append(out, p)
		}
		if !slices.Contains(out[k].Students, student) {
			out[k].Students = append(out[k].Students, student)
		}
	}
	for m, x := range t.learners {
		who, plan := x.Name.Value, t.plan.Students[m].Plan
		for i := c.first; i <= c.last; i++ {
			k := t.joined.Numbers[i].Of[m]
			if k < 0 {
				continue
			}
			n := x.o.ops[k]
			st := x.o.room.stations[n.station]
			if n.Setting.Needle != "" {
				add(who, Preparation{Kind: "needle", Place: st.Title, What: n.Setting.Needle})
			}
			if n.Setting.Foot != "" {
				add(who, Preparation{Kind: "foot", Place: st.Title, What: n.Setting.Foot})
			}
			if n.Setting.HeatDots > 0 {
				add(who, Preparation{Kind: "heat", Place: st.Title, HeatDots: n.Setting.HeatDots})
			}
			for _, f := range plan.Interfacing {
				if n.ID == holding+"."+f.Piece || n.Seam != "" && strings.HasPrefix(f.Name, n.Seam+"-") {
					add(who, Preparation{Kind: "interfacing", What: f.MaterialTitle})
				}
			}
			for _, o := range plan.Notions {
				if n.Seam != "" && (o.Name == n.Seam || o.Name == n.Seam+"-elastic") {
					add(who, Preparation{Kind: "notion", What: o.Title})
				}
			}
		}
	}
	kinds, places := []string{"needle", "foot", "heat", "interfacing", "notion"}, []string{}
	for _, p := range out {
		places = append(places, p.Place)
	}
	slices.SortStableFunc(out, func(a, b Preparation) int {
		return cmp.Or(slices.Index(kinds, a.Kind)-slices.Index(kinds, b.Kind), slices.Index(places, a.Place)-slices.Index(places, b.Place))
	})
	return out
}
