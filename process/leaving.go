package process

import (
	"slices"

	"bodkin/seams"
)

// leaving is the name before the dot of the operation that leaves a machine
// threaded as the room wants it.
const leaving = "leave"

// leaveThreaded adds, for each machine that is used and that the room wants left
// in a colour, the operation that sees to it. Of several machines of one kind it
// is added when it is known which are used, see seat. It waits for all that is sewn at
// the machine, and costs a change only where the last row was in another colour.
func (o *operator) leaveThreaded() {
	for k, st := range o.room.stations {
		used := slices.ContainsFunc(o.ops, func(n op) bool { return n.station == k })
		if st.leave != "" && used && len(o.room.weighed(o.room.first(k))) < 2 {
			o.ops = append(o.ops, o.threadToLeave(k))
		}
	}
}

func (o *operator) threadToLeave(k int) op {
	st, act := o.room.stations[k], o.act("thread")
	n := op{line: -1, station: k, act: act, cloths: []seams.Cloth{o.cloths[0].cloth}}
	n.ID, n.Does, n.Part, n.Station = leaving+"."+st.Name, "thread", lowerFirst(st.Title), st.Name
	n.Setting.carry(st.leave, st.below)
	n.Text = "Leave it threaded with " + st.leave + ", as was asked, and sew ten stitches on a scrap."
	n.Good = "The scrap shows an even row in " + st.leave + "."
	n.Minutes, n.Basis = act.Start, act.Basis
	return n
}

// leaveBecause is the reason why that comes last.
const leaveBecause = "the machine is left as the room wants it once all is sewn there"

// leaveLast makes leaving a machine wait for what is sewn there.
func (o *operator) leaveLast() {
	for i, n := range o.ops {
		if n.Does != "thread" {
			continue
		}
		for k := range o.ops {
			if k != i && o.ops[k].station == n.station && !o.reaches(i, k) {
				o.need(i, k, leaveBecause)
			}
		}
	}
}
