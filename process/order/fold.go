package order

// A fold lets operations wait for others. Say x is ready, k is not done, and
// what follows x, up to where it meets what follows k, can be done beside what
// follows k, mode within mode and in the same order. Then any order of the
// rest serves those operations too: each is done next to its image, at no
// cost. (The map is a retraction of the poset of what is left.) So they may be
// left out of the search; a replay that does everything free at once does them
// in time.
type fold struct {
	k     int
	needs set // operations that must be done besides
	moved set // operations that may then wait
}

// folds holds the folds of a model by the operation that waits first, each
// list made when it is first asked for.
type folds struct {
	m     *model
	lists [][]fold
	made  []bool
	image []int // scratch
}

func newFolds(m *model) *folds {
	return &folds{m: m, lists: make([][]fold, m.n), made: make([]bool, m.n), image: make([]int, m.n)}
}

// apply takes the ready operation x and its followers out of the search by
// counting them as done, if one of its folds allows.
func (fs *folds) apply(x int, done set) {
	if done.has(x) {
		return
	}
	if !fs.made[x] {
		fs.make(x)
	}
	for i := range fs.lists[x] {
		f := &fs.lists[x][i]
		if !done.has(f.k) && f.needs.within(done) {
			done.union(f.moved)
			return
		}
	}
}

func (fs *folds) make(x int) {
	fs.made[x] = true
	m := fs.m
	if !m.modes[m.mode[x]].free {
		return
	}
	for k := range m.n {
		if k != x && !m.below[x].has(k) && m.serves(m.mode[k], m.mode[x]) {
			if f, ok := fs.try(x, k); ok {
				fs.lists[x] = append(fs.lists[x], f)
			}
		}
	}
}

// try maps x to k, and every follower of x that does not follow the image of
// the one before it to the first operation from there on that serves it.
func (fs *folds) try(x, k int) (fold, bool) {
	m, image := fs.m, fs.image
	for i := range image {
		image[i] = -1
	}
	image[x] = k
	queue := []int{x}
	for at := 0; at < len(queue); at++ {
		y := queue[at]
		for _, s := range m.succ[y] {
			if image[s] >= 0 || m.notBefore(s, image[y]) {
				continue
			}
			if image[s] = fs.firstFor(s, image[y]); image[s] < 0 {
				return fold{}, false
			}
			queue = append(queue, s)
		}
	}
	f := fold{k: k, needs: newSet(m.n), moved: newSet(m.n)}
	for _, y := range queue {
		if image[image[y]] >= 0 {
			return fold{}, false // an image must stay
		}
		for _, s := range m.succ[y] {
			to := s
			if image[s] >= 0 {
				to = image[s]
			}
			if !m.notBefore(to, image[y]) {
				return fold{}, false
			}
		}
		f.moved.add(y)
		for _, b := range m.pred[y] {
			if image[b] < 0 {
				f.needs.add(b)
			}
		}
	}
	return f, true
}

// firstFor returns the first operation from k on that serves x, or -1.
func (fs *folds) firstFor(x, k int) int {
	m := fs.m
	if m.serves(m.mode[k], m.mode[x]) {
		return k
	}
	first := -1
	m.above[k].each(func(a int) {
		if m.serves(m.mode[a], m.mode[x]) && (first < 0 || m.above[a].has(first)) {
			first = a
		}
	})
	return first
}

// notBefore reports whether a is b or follows it.
func (m *model) notBefore(a, b int) bool { return a == b || m.above[b].has(a) }
