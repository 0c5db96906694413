package process

import (
	"strconv"

	"bodkin/process/study"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
)

// Workroom is what stands in the room, the house's own figures, and the minutes
// that a change takes there.
type Workroom struct {
	Name     string                  `yaml:"name"`
	Units    form.Text               `yaml:"units"` // cm or in
	Machines []RoomMachine           `yaml:"machines"`
	People   []RoomPerson            `yaml:"people"`  // who shares the work; the maker first
	Iron     form.Text               `yaml:"iron"`    // steam, dry or none
	House    form.Pairs[length.MM]   `yaml:"house"`   // own widths by the names that constructions ask for
	Minutes  RoomMinutes             `yaml:"minutes"` // what differs from the shelf
	Timed    []TimedAct              `yaml:"timed"`   // acts watched with a clock here
	Rests    Rests                   `yaml:"rests"`
	Cones    form.Pairs[int]         `yaml:"cones"` // how many of a colour there are, for machines with loopers
	Near     form.Pairs[[]form.Text] `yaml:"near"`  // colours of thread that blend with one, the nearest first
	Favour   form.Text               `yaml:"favour"`
}

// RoomMachine is a machine of the shelf that stands in the room.
type RoomMachine struct {
	Is       form.Text `yaml:"is,required"`
	Name     string    `yaml:"name"`     // what the house calls it; its title on the shelf where absent
	Threaded string    `yaml:"threaded"` // the colour it is threaded with now
	Foot     form.Text `yaml:"foot"`     // the foot it wears now
	Leave    string    `yaml:"leave"`    // the colour it is to be left threaded with
}

// RoomMinutes are the house's own minutes for a change; absent ones are the
// shelf's.
type RoomMinutes struct {
	Move    form.Text `yaml:"move"`    // from one station to another
	Thread  form.Text `yaml:"thread"`  // through the needles
	Bobbin  form.Text `yaml:"bobbin"`  // another one put in, wound
	Loopers form.Text `yaml:"loopers"` // all of them
	Needle  form.Text `yaml:"needle"`
	Foot    form.Text `yaml:"foot"`
	Stitch  form.Text `yaml:"stitch"`
	Hotter  form.Text `yaml:"hotter"` // the iron, a dot
	Cooler  form.Text `yaml:"cooler"`
	Pick    form.Text `yaml:"pick"` // another seam, edge or detail of the garment taken up; 0 where absent
	Wind    form.Text `yaml:"wind"` // one bobbin, before the work begins

	Handover form.Text `yaml:"handover"` // a piece from one person to another
}

// ParseWorkroom reads a workroom strictly. Errors are [form.Faults].
func ParseWorkroom(file string, data []byte) (*Workroom, error) {
	var w Workroom
	if err := form.Decode(file, data, &w); err != nil {
		return nil, err
	}
	var faults form.Faults
	faults = append(faults, oneOf(w.Units, "units", unitNames)...)
	faults = append(faults, oneOf(w.Favour, "favour", favours)...)
	faults = append(faults, oneOf(w.Iron, "iron", ironKinds)...)
	for _, t := range []form.Text{w.Minutes.Move, w.Minutes.Thread, w.Minutes.Bobbin, w.Minutes.Loopers, w.Minutes.Needle, w.Minutes.Foot, w.Minutes.Stitch, w.Minutes.Hotter, w.Minutes.Cooler, w.Minutes.Pick, w.Minutes.Wind, w.Minutes.Handover} {
		if t.Value == "" {
			continue
		}
		if m, err := strconv.ParseFloat(t.Value, 64); err != nil || m < 0 || m > 240 {
			faults = append(faults, form.FaultAt(t.At, "cannot read "+strconv.Quote(t.Value)+" as minutes",
				"", "write a number of minutes from 0 to 240, such as 3 or 0.5"))
		}
	}
	for _, p := range w.House {
		if p.Value < 0 || p.Value > 200 {
			faults = append(faults, form.FaultAt(p.Key.At, "a house figure of "+strconv.FormatFloat(float64(p.Value), 'g', 4, 64)+" mm is absurd",
				"", "write a width from 0 to 200 mm"))
		}
	}
	faults = append(faults, checkTiming(w.Timed, w.Rests)...)
	faults = append(faults, checkCones(w.Cones)...)
	faults = append(faults, checkShades(w.Near)...)
	faults = append(faults, checkPeople(w.People)...)
	if len(faults) > 0 {
		return nil, faults
	}
	return &w, nil
}

func ironKinds() []string { return []string{"dry", "none", "steam"} }

// DefaultWorkroom is the room that is assumed where none is described: one
// straight stitcher, a steam iron and a pair of hands.
func DefaultWorkroom() *Workroom {
	return &Workroom{
		Name:     "A plain room",
		Machines: []RoomMachine{{Is: form.Text{Value: "straight-stitcher"}}},
		Iron:     form.Text{Value: "steam"},
	}
}

// room is the workroom with the shelf's machines looked up.
type room struct {
	stations []station
	begin    int // station where the work begins, -1 at none
	house    map[string]float64
	move     float64            // minutes
	pick     float64            // minutes to take up another part
	wind     float64            // minutes for one bobbin
	watched  map[string]watched // by act
	rests    study.Allowances
	iron     bool
	steam    bool
	maxDots  int
	favour   string
	style    length.Style
}

// station is a place in the room with what it costs to change it.
type station struct {
	Station
	machine seams.Machine
	below   []string // which of bobbin and loopers it has
	leave   string   // thread it is to be left with; empty where that is all one
	held    Setting  // what it is set to now; empty where nothing is known
	tried   bool     // its trial row is sewn already
	minutes seams.Changes
}

// Names of the stations that every room has.
const (
	tableStation = "table"
	ironStation  = "iron"
	handStation  = "hand"
)

// defaultMove is the minutes it takes to get up, carry the work to another
// station and settle: an estimate, no published figure; a house may set its own.
const defaultMove = 0.25

// defaultWind is the minutes it takes to wind a bobbin: put the thread on the
// winder, fill it, cut it off. An estimate, no published figure; a house may set
// its own.
const defaultWind = 1
