package process

import (
	_ "embed"
	"slices"
	"strings"

	"bodkin/seams/form"
)

//go:embed skills.yaml
var skillsText []byte

// Asked is a skill that an operation asks for, at a level from 1 to 3, and why.
type Asked struct {
	Skill   string   `json:"skill"`
	Title   string   `json:"title"`
	Level   int      `json:"level"`
	Because []string `json:"because"`
}

// skillEntry is an entry of skills.yaml: a skill, who asks for it, or what
// makes it harder.
type skillEntry struct {
	Skill    string   `yaml:"skill"`
	Title    string   `yaml:"title"`
	Asked    string   `yaml:"asked"`
	Harder   string   `yaml:"harder"`
	For      string   `yaml:"for"` // only where this skill is asked for
	Acts     []string `yaml:"acts"`
	Station  string   `yaml:"station"`
	Stitches []string `yaml:"stitches"` // beginnings of ISO 4915 numbers
	Fact     string   `yaml:"fact"`
	AtLeast  float64  `yaml:"at_least"`
	Below    float64  `yaml:"below"`
	Level    int      `yaml:"level"`
	Because  string   `yaml:"because"`
	Source   string   `yaml:"source,required"`
}

// skillEntries reads the rules. They are our own, so a fault in them is ours;
// their own test finds it.
func skillEntries() []skillEntry {
	var out []skillEntry
	if err := form.Decode("skills.yaml", skillsText, &out); err != nil {
		panic(err)
	}
	return out
}

func skillNames() []string {
	var out []string
	for _, e := range skillEntries() {
		if e.Skill != "" {
			out = append(out, e.Skill)
		}
	}
	return out
}

// difficulty is what an operation asks of the person who does it: a skill by
// its act, its stitch and its station, more of it or another where shape and
// construction make it harder, and a hand for delicate cloth.
func (o *operator) difficulty(rules []skillEntry, n *op) []Asked {
	titles := map[string]string{}
	for _, e := range rules {
		if e.Skill != "" {
			titles[e.Skill] = e.Title
		}
	}
	kind := o.room.stations[n.station].Kind
	touches := func(e skillEntry) bool {
		return (len(e.Acts) == 0 || slices.Contains(e.Acts, n.Does)) &&
			(e.Station == "" || e.Station == kind) &&
			(len(e.Stitches) == 0 || kind == "machine" && slices.ContainsFunc(e.Stitches, func(s string) bool { return strings.HasPrefix(n.Setting.Stitch, s) }))
	}
	main := slices.IndexFunc(rules, func(e skillEntry) bool { return e.Asked != "" && touches(e) })
	out := []Asked{{Skill: rules[main].Asked, Level: 1, Because: []string{}}}
	facts := o.hardness(n)
	for _, e := range rules {
		if e.Harder == "" || !touches(e) || e.For != "" && e.For != rules[main].Asked ||
			e.Harder != "delicate" && e.For == "" && e.Harder != rules[main].Asked {
			continue
		}
		if e.Fact != "" {
			v, ok := facts[e.Fact]
			if !ok || e.AtLeast > 0 && v < e.AtLeast || e.Below > 0 && v >= e.Below {
				continue
			}
		}
		at := slices.IndexFunc(out, func(a Asked) bool { return a.Skill == e.Harder })
		if at < 0 {
			at = len(out)
			out = append(out, Asked{Skill: e.Harder, Because: []string{}})
		}
		out[at].Level = max(out[at].Level, e.Level)
		out[at].Because = append(out[at].Because, e.Because)
	}
	for i := range out {
		out[i].Title = titles[out[i].Skill]
	}
	return out
}

// hardness are the facts that the rules ask about. Cloth counts only where it
// is cut, sewn or pressed, not where it is measured or tried on.
func (o *operator) hardness(n *op) map[string]float64 {
	facts := map[string]float64{}
	if n.Does == "measure" || n.Does == "fit" || n.Does == scrapTest {
		return facts
	}
	for _, c := range n.cloths {
		f := c.Facts()
		for name, v := range map[string]float64{
			"slip": float64(f.Slip), "fraying": float64(f.Fraying), "sheerness": float64(f.Sheerness),
			"stretch": f.Stretch, "thickness": f.Thickness,
		} {
			facts[name] = max(facts[name], v)
		}
		if f.Pile {
			facts["pile"] = 1
		}
	}
	if n.line < 0 || n.strip {
		return facts
	}
	l := o.lines[n.line]
	f := l.facts.Edge
	if l.work == joining {
		f = l.facts.Join
	}
	if f.TightestRadius > 0 {
		facts["radius"] = f.TightestRadius
	}
	facts["eased"], facts["layers"] = f.Eased, float64(n.layers)
	return facts
}
