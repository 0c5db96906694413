package seams

import (
	"slices"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Stitch is an ISO 4915 stitch type, or a hand stitch.
type Stitch struct {
	Name    string  `yaml:"stitch,required"` // ISO 4915 number such as 301
	Title   string  `yaml:"title,required"`
	MadeBy  string  `yaml:"made_by"` // what forms it, in words
	Needles int     `yaml:"needles"` // needle threads
	Loopers int     `yaml:"loopers"`
	Bobbins int     `yaml:"bobbins"`
	Covers  int     `yaml:"covers"`
	Hand    bool    `yaml:"hand"`
	Stretch float64 `yaml:"stretch"` // % the seam gives before a thread breaks
	// Ratio is metres of thread, all threads together, per metre of seam; used
	// where no Formula is known.
	Ratio float64 `yaml:"ratio"`
	// NeedleShare is the part of all thread that runs through the needles, 0 to 1.
	NeedleShare float64 `yaml:"needle_share"`
	// Formula is thread per unit of seam from s (stitches per mm), t (thickness
	// of the whole seam in mm) and w (overedge bight in mm).
	Formula     form.Text    `yaml:"formula"`
	RatioSource string       `yaml:"ratio_source,required"`
	Differ      []Difference `yaml:"differ"`
	Source      string       `yaml:"source,required"`
	// Strength is the factor from the thread's own strength to that of a seam
	// with one stitch per unit of length; 0 where none is published.
	Strength float64 `yaml:"strength"`

	draws *formula.Formula
}

// Machine is a thing that stands in the workroom: it forms stitches, or it
// presses, or it is a pair of hands with a needle.
type Machine struct {
	Name         string       `yaml:"machine,required"`
	Title        string       `yaml:"title,required"`
	Kind         string       `yaml:"kind,required" oneof:"machine iron hand"`
	Industrial   bool         `yaml:"industrial"` // built for a factory: on its own bench, made for one thing
	Forms        []string     `yaml:"forms"`
	Speed        float64      `yaml:"speed"`     // stitches a minute, as a careful maker runs it
	MaxSpeed     float64      `yaml:"max_speed"` // stitches a minute that it is built for
	MaxThickness float64      `yaml:"max_thickness"`
	Feet         []string     `yaml:"feet"` // the first is the one it usually wears
	Needles      string       `yaml:"needles"`
	NeedleSystem string       `yaml:"needle_system"` // shank and length that the maker asks for
	Threads      int          `yaml:"threads"`       // cones or spools to change for a colour
	Bobbin       float64      `yaml:"bobbin"`        // metres on a full bobbin; 0 where there is none
	Minutes      Changes      `yaml:"minutes"`
	Steam        bool         `yaml:"steam"`
	MaxDots      int          `yaml:"max_dots"` // iron only
	Differ       []Difference `yaml:"differ"`
	Source       string       `yaml:"source,required"`
}

// Changes are the minutes that a change of each kind takes.
type Changes struct {
	Thread  float64 `yaml:"thread"`  // through the needles, and what covers
	Bobbin  float64 `yaml:"bobbin"`  // another one put in, wound
	Loopers float64 `yaml:"loopers"` // all of them
	Needle  float64 `yaml:"needle"`
	Foot    float64 `yaml:"foot"`
	Stitch  float64 `yaml:"stitch"`
	Hotter  float64 `yaml:"hotter"` // iron, a dot up
	Cooler  float64 `yaml:"cooler"` // iron, a dot down
}

// FormedBy reports, as a function for [WorkroomFacts], whether one of the
// machines forms a stitch.
func FormedBy(machines []Machine) func(stitch string) bool {
	return func(stitch string) bool {
		for _, m := range machines {
			if slices.Contains(m.Forms, stitch) {
				return true
			}
		}
		return false
	}
}
