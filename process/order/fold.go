package order

import "slices"

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
	serve []set // by operation, those that serve it
	image []int // scratch: where an operation is mapped, or -1
}

func newFolds(m *model) *folds {
	fs := &folds{m: m, lists: make([][]fold, m.n), made: make([]bool, m.n), serve: make([]set, m.n), image: make([]int, m.n)}
	for i := range fs.image {
		fs.image[i] = -1
	}
	return fs
}

// servers returns the operations that serve x: whichever way they are done, x
// costs nothing right before or after, and both may be done as soon as they
// cost nothing. Operations with wishes neither serve nor are served.
func (fs *folds) servers(x int) set {
	if fs.serve[x] == nil {
		fs.serve[x] = newSet(fs.m.n)
		if fs.m.free[x] && !fs.m.isWished(x) {
			for i := range fs.m.n {
				if fs.serves(i, x) {
					fs.serve[x].add(i)
				}
			}
		}
	}
	return fs.serve[x]
}

func (fs *folds) serves(i, x int) bool {
	m := fs.m
	if !m.free[i] || m.isWished(i) {
		return false
	}
	for _, a := range m.ways[i] {
		if !slices.ContainsFunc(m.openWays(x), func(b int) bool { return m.within(m.acts[a].mode, m.acts[b].mode) }) {
			return false
		}
	}
	return true
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
	const most = 64 // more would cost more memory than they save search
	fs.made[x] = true
	fs.servers(x).each(func(k int) {
		if k == x || fs.m.below[x].has(k) || len(fs.lists[x]) == most {
			return
		}
		moved, ok := fs.try(x, k)
		if ok {
			fs.lists[x] = append(fs.lists[x], fs.fold(k, moved))
		}
		for _, y := range moved {
			fs.image[y] = -1
		}
	})
}

// try maps x to k, and every follower of x that does not follow the image of
// the one before it to the first operation from there on that serves it. It
// returns what is moved and whether the map is sound.
func (fs *folds) try(x, k int) ([]int, bool) {
	m, image := fs.m, fs.image
	image[x] = k
	moved := []int{x}
	for at := 0; at < len(moved); at++ {
		y := moved[at]
		for _, s := range m.succ[y] {
			if image[s] >= 0 || m.notBefore(s, image[y]) {
				continue
			}
			if image[s] = fs.firstFor(s, image[y]); image[s] < 0 {
				return moved, false
			}
			moved = append(moved, s)
		}
	}
	for _, y := range moved {
		if image[image[y]] >= 0 {
			return moved, false // an image must stay
		}
		for _, s := range m.succ[y] {
			to := s
			if image[s] >= 0 {
				to = image[s]
			}
			if !m.notBefore(to, image[y]) {
				return moved, false
			}
		}
	}
	return moved, true
}

func (fs *folds) fold(k int, moved []int) fold {
	f := fold{k: k, needs: newSet(fs.m.n), moved: newSet(fs.m.n)}
	for _, y := range moved {
		f.moved.add(y)
		for _, b := range fs.m.pred[y] {
			if fs.image[b] < 0 {
				f.needs.add(b)
			}
		}
	}
	return f
}

// firstFor returns the first operation from k on that serves x, or -1.
func (fs *folds) firstFor(x, k int) int {
	servers, above := fs.servers(x), fs.m.above
	if servers.has(k) {
		return k
	}
	first := -1
	for w, word := range above[k] {
		set{word & servers[w]}.each(func(a int) {
			if a += w << 6; first < 0 || above[a].has(first) {
				first = a
			}
		})
	}
	return first
}

// notBefore reports whether a is b or follows it.
func (m *model) notBefore(a, b int) bool { return a == b || m.above[b].has(a) }
