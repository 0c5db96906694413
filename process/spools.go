package process

import (
	"fmt"
	"slices"

	"bodkin/seams"
)

// spools are the kinds of thread that the garments of a sitting are sewn with in a
// colour: one for each, that of its first row, as its plan by itself has it.
type spools map[spoolOf]*seams.Thread

type spoolOf struct {
	garment int
	colour  string
}

// spool is the thread of a row that wants nothing special. Trial rows, which come
// after all garments, are sewn with what is there.
func (s spools) spool(n *op, colour string, kind *seams.Thread) *seams.Thread {
	at := spoolOf{n.Garment, colour}
	for other := range s { // the first garment that has the colour
		if n.Garment == 0 && other.colour == colour && (at.garment == 0 || other.garment < at.garment) {
			at = other
		}
	}
	if _, ok := s[at]; !ok {
		s[at] = kind
	}
	return s[at]
}

// kindsOfThread tell of colours that garments of a sitting want in several kinds of
// thread at one machine, which the order does not tell apart.
func (o *operator) kindsOfThread() ([]Notice, error) {
	var colours []string
	kinds := map[string][]string{} // of a colour
	for k, st := range o.room.stations {
		on := spools{}
		here := map[string][]string{}
		for i := range o.ops {
			n := &o.ops[i]
			if n.station != k || st.Kind != "machine" || n.Setting.Stitch == "" || n.Garment == 0 {
				continue
			}
			kind, special, err := o.threadKind(n)
			if err != nil {
				return nil, err
			}
			if special {
				continue
			}
			colour := n.Setting.Thread
			if title := lowerFirst(on.spool(n, colour, kind).Title); !slices.Contains(here[colour], title) {
				here[colour] = append(here[colour], title)
			}
		}
		for _, n := range o.ops {
			c := n.Setting.Thread
			if len(here[c]) > 1 && kinds[c] == nil {
				colours, kinds[c] = append(colours, c), here[c]
			}
		}
	}
	var out []Notice
	for _, c := range colours {
		out = append(out, Notice{About: "thread", Text: fmt.Sprintf("%s is wanted in %s. The order takes that for one thread: sew all with one that suits every cloth, or change the spool where the garment changes, which the minutes do not count.",
			upperFirst(c), listWords(kinds[c], "and in"))})
	}
	return out, nil
}
