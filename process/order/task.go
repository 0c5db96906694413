package order

// A task is what a problem leaves to be done, with the operations numbered
// anew.
type task struct {
	p    Problem // nothing in it is done
	name []int   // of each operation in the whole problem
	hand int     // the group in hand, or NoGroup
	owed int64   // for wishes that can be kept no longer
}

// newTask returns what is left of a valid problem.
func newTask(p Problem) *task {
	t := &task{p: p, hand: NoGroup}
	renamed := make([]int, len(p.Operations)) // or -1
	for _, i := range p.Done {
		renamed[i] = -1
		if g := p.Operations[i].Group; g != NoGroup {
			t.hand = g
		}
	}
	for i := range p.Operations {
		if renamed[i] == 0 {
			renamed[i] = len(t.name)
			t.name = append(t.name, i)
		}
	}
	t.p.Operations = make([]Operation, len(t.name))
	for k, i := range t.name {
		op := p.Operations[i]
		op.After = nil
		for _, b := range p.Operations[i].After {
			if renamed[b] >= 0 {
				op.After = append(op.After, renamed[b])
			}
		}
		t.p.Operations[k] = op
	}
	t.p.Wishes, t.p.Done = nil, nil
	for _, w := range p.Wishes {
		first, then := renamed[w.First], renamed[w.Then]
		switch {
		case first < 0:
		case then < 0:
			t.owed += w.Cost
		default:
			t.p.Wishes = append(t.p.Wishes, Wish{first, then, w.Cost})
		}
	}
	return t
}

// steps names the acts of the task's model as the whole problem does.
func (t *task) steps(m *model, acts []int) (sequence, ways []int) {
	sequence, ways = make([]int, len(t.name)), make([]int, len(t.name))
	for k, a := range acts[:len(t.name)] { // without the end
		sequence[k], ways[k] = t.name[m.acts[a].op], m.acts[a].way
	}
	return sequence, ways
}
