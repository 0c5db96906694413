package process

import (
	"slices"
	"strconv"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
)

// Job is what a maker asks for: a garment, its size, its cloths, and what she
// insists on. It is read strictly by [ParseJob].
type Job struct {
	Make     form.Text               `yaml:"make,required"` // a garment on the shelf, or a path to her own
	Title    string                  `yaml:"title"`
	Size     form.Pairs[form.Text]   `yaml:"size"`    // measures by name
	Choices  form.Pairs[form.Text]   `yaml:"choices"` // lengths, numbers or words by name
	Cloth    form.Pairs[JobCloth]    `yaml:"cloth"`   // by role: main, binding, contrast …
	Seams    form.Pairs[form.Text]   `yaml:"seams"`   // construction by seam name, "anyway" after it to overrule a rule
	Order    []form.Text             `yaml:"order"`   // seams, edges or operations, each done before the next is begun
	Pins     []form.Text             `yaml:"pins"`    // "neck before side", "fit after side"
	Wishes   form.Pairs[form.Text]   `yaml:"wishes"`  // minutes that each is worth: region, small, delicate, fitting, "neck before side"
	Quantity form.Text               `yaml:"quantity"`
	Also     []JobSize               `yaml:"also"`     // further sizes in the same cloths
	Cones    form.Pairs[int]         `yaml:"cones"`    // over what the workroom has counted
	Near     form.Pairs[[]form.Text] `yaml:"near"`     // colours of thread that blend with one, the nearest first; over the workroom's
	Machines form.Pairs[Standing]    `yaml:"machines"` // by the workroom's name for them: how they stand now and are to be left
	Favour   form.Text               `yaml:"favour"`   // quick, neat or strong
	Units    form.Text               `yaml:"units"`    // cm or in; the workroom's where absent
	Notes    string                  `yaml:"notes"`    // Markdown of her own
}

// JobCloth is the cloth in one role: one of the shelf by its name, or her own,
// which is like one of the shelf but for what differs or is told by its
// properties.
type JobCloth struct {
	Is     form.Text `yaml:"is"`
	Like   form.Text `yaml:"like"`
	Under  form.Text `yaml:"under"` // a cloth of the shelf laid against its wrong side, the two sewn as one
	Title  string    `yaml:"title"` // of her own cloth; what it is like where absent
	Colour string    `yaml:"colour"`
	Thread string    `yaml:"thread"` // colour it is sewn with; the cloth's own where absent
	Width  length.MM `yaml:"width"`  // selvedge to selvedge; the cloth's first usual width where absent
	seams.Properties
	Estimates []string   `yaml:"estimates"` // properties whose figure is an estimate
	Keys      *form.Node `yaml:",node"`     // as written; nil where the job was made in code
}

// Standing is how a machine of the workroom stands when this job is begun, and
// how it is to be left; what is not told is as the workroom has it.
type Standing struct {
	Threaded string    `yaml:"threaded"` // colour
	Foot     form.Text `yaml:"foot"`
	Leave    string    `yaml:"leave"` // colour
}

// MaxQuantity bounds a job: more garments than one maker sews in a sitting.
const MaxQuantity = 500

// ParseJob reads a job. Errors are [form.Faults] with their places; on error
// the job is nil.
func ParseJob(file string, data []byte) (*Job, error) {
	var j Job
	if err := form.Decode(file, data, &j); err != nil {
		return nil, err
	}
	var faults form.Faults
	faults = append(faults, quantityFaults(j.Quantity)...)
	faults = append(faults, j.alsoFaults()...)
	faults = append(faults, oneOf(j.Favour, "favour", favours)...)
	faults = append(faults, oneOf(j.Units, "units", unitNames)...)
	faults = append(faults, checkCones(j.Cones)...)
	faults = append(faults, checkShades(j.Near)...)
	for _, p := range j.Cloth {
		if p.Value.Width < 0 || p.Value.Width > 5000 {
			faults = append(faults, form.FaultAt(p.Key.At, "the cloth for "+p.Key.Value+" has an impossible width",
				"", "write the width from selvedge to selvedge, such as 114 cm"))
		}
	}
	for _, p := range j.Cloth {
		faults = append(faults, p.Value.check(p.Key)...)
	}
	for _, p := range j.Seams {
		if _, _, ok := insistence(p.Value.Value); !ok {
			faults = append(faults, form.FaultAt(p.Value.At, "cannot read "+strconv.Quote(p.Value.Value)+" as a construction",
				"", "write its name, such as french, or its name and anyway to overrule what speaks against it"))
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return &j, nil
}

// quick is the favour that minutes decide, the only one that is more than a
// fact for the shelf's rules.
const quick = "quick"

func favours() []string   { return []string{"neat", quick, "strong"} }
func unitNames() []string { return []string{"cm", "in"} }

func oneOf(t form.Text, key string, words func() []string) form.Faults {
	if t.Value == "" || slices.Contains(words(), t.Value) {
		return nil
	}
	return form.Faults{form.FaultAt(t.At, key+" cannot be "+strconv.Quote(t.Value), form.Nearest(t.Value, words()),
		"write one of "+strings.Join(words(), ", "))}
}

// insistence splits "french anyway" into the construction and whether rules
// are overruled.
func insistence(s string) (construction string, anyway, ok bool) {
	switch w := strings.Fields(s); {
	case len(w) == 1:
		return w[0], false, true
	case len(w) == 2 && w[1] == "anyway":
		return w[0], true, true
	}
	return "", false, false
}

func (j *Job) quantity() int {
	if n, err := strconv.Atoi(j.Quantity.Value); err == nil {
		return n
	}
	return 1
}
