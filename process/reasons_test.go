package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
)

// chosen works a job out without looking for the best order.
func chosen(t testing.TB, shelf *seams.Shelf, j *process.Job, w *process.Workroom) *process.Plan {
	t.Helper()
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: garmentOf(t, j.Make.Value), Workroom: w, Shelf: shelf},
		order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatalf("%s in %s: %v", j.Make.Value, w.Name, err)
	}
	return p
}

func rejectedAs(s process.Seam, construction string) (process.Rejected, bool) {
	k := slices.IndexFunc(s.Rejected, func(r process.Rejected) bool { return r.Construction == construction })
	if k < 0 {
		return process.Rejected{}, false
	}
	return s.Rejected[k], true
}

// The reasons are those of the shelf's own entries, each with its source there;
// that a beginner is told the one or two that decide is our own rule.
func TestWhyRunnersUpLost(t *testing.T) {
	shelf := loadShelf(t)
	lock, serger := rooms()[0], rooms()[3]
	for _, tt := range []struct {
		garment, cloth string
		room           *process.Workroom
		seam, won      string
		lost, because  string
	}{
		{"pull-on-skirt", "silk-georgette", lock, "side", "french", "mock-french", "the raw edges are enclosed, so no more than a narrow line shows through"},
		{"pull-on-skirt", "silk-georgette", serger, "side", "french", "plain-together-overlocked", "show"},
		{"pull-on-skirt", "linen-medium", lock, "hem", "deep-double-fold", "blind-stitched-by-hand", "the edge has to be overcast by hand as well"},
		{"open-jacket", "linen-medium", rooms()[4], "side", "plain-together-overlocked", "plain-open-overlocked", "it would do as well, but takes"},
		{"pull-on-skirt", "cotton-lawn", serger, "side", "plain-together-overlocked", "french", "the chosen one has this for it: "},
	} {
		s := seamOf(t, chosen(t, shelf, jobFor(garmentOf(t, tt.garment), tt.cloth, "cotton-lawn"), tt.room), tt.seam)
		r, ok := rejectedAs(s, tt.lost)
		if s.Construction != tt.won || !ok || r.RuledOut || !strings.Contains(strings.Join(r.Because, "; "), tt.because) {
			t.Errorf("%s in %s, %s: %s, and not %s because %q", tt.garment, tt.cloth, tt.seam, s.Construction, tt.lost, r.Because)
		}
	}
}

// Whatever the cloth: a runner-up that is not ruled out has one or two reasons,
// each of them written on the shelf for it or for the chosen one, or the
// planner's own; never one that holds of the chosen one too.
func TestEveryRunnerUpHasReasons(t *testing.T) {
	shelf := loadShelf(t)
	own := []string{"it would do as well", "as much or more speaks for it", "most of the garment's other work", "quick work is favoured, and of all"}
	written := func(name, words string) bool {
		c, err := shelf.Construction(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range slices.Concat(c.SpeaksFor, c.SpeaksAgainst) {
			if strings.HasSuffix(words, r.Because) {
				return true
			}
		}
		return slices.ContainsFunc(own, func(w string) bool { return strings.Contains(words, w) })
	}
	for _, cloth := range []string{"silk-georgette", "cotton-lawn", "linen-medium", "denim", "velvet", "cotton-jersey"} {
		for _, favour := range []string{"", "quick"} {
			j := jobFor(garmentOf(t, "shell-top"), cloth, "cotton-lawn")
			j.Favour = text(favour)
			for _, s := range chosen(t, shelf, j, rooms()[4]).Seams {
				for _, r := range s.Rejected {
					if r.RuledOut {
						continue
					}
					if n := len(r.Because); n < 1 || n > 2 {
						t.Errorf("%s in %s: %d reasons against %s: %q", s.Name, cloth, n, r.Construction, r.Because)
					}
					for _, words := range r.Because {
						if !slices.ContainsFunc(strings.Split(words, "; and "), func(w string) bool { return written(r.Construction, w) || written(s.Construction, w) }) {
							t.Errorf("%s in %s: %s lost for a reason that is not on the shelf: %q", s.Name, cloth, r.Construction, words)
						}
						if slices.Contains(s.Against, words) {
							t.Errorf("%s in %s: %s lost for what holds of %s too: %q", s.Name, cloth, r.Construction, s.Construction, words)
						}
					}
				}
			}
		}
	}
}

// A garment keeps to few kinds of seam (common practice, no source): one seam
// of a challis coat would rather be French, but the longer side seams are not.
func TestSeamsAreAlike(t *testing.T) {
	shelf := loadShelf(t)
	j := jobFor(garmentOf(t, "open-jacket"), "viscose-challis", "cotton-poplin")
	serger := rooms()[3]
	p := chosen(t, shelf, j, serger)
	side, over := seamOf(t, p, "side"), seamOf(t, p, "overarm")
	if side.Construction != over.Construction {
		t.Errorf("the side is %s and the overarm %s", side.Construction, over.Construction)
	}
	alike := func(words []string) bool {
		return slices.ContainsFunc(words, func(w string) bool {
			return strings.Contains(w, "most of the garment's other work of this kind is sewn so")
		})
	}
	if r, _ := rejectedAs(over, "french"); !alike(over.Because) || alike(side.Because) || !alike(r.Because) {
		t.Errorf("overarm because %q, side because %q, not French because %q", over.Because, side.Because, r.Because)
	}
	// A seam that is insisted on stays as it was asked for.
	j.Seams = append(j.Seams, pair("overarm", "french"))
	p = chosen(t, shelf, j, serger)
	if over := seamOf(t, p, "overarm"); over.Construction != "french" || alike(over.Because) {
		t.Errorf("insisted on, the overarm is %s because %q", over.Construction, over.Because)
	}
	// A real reason outweighs likeness: tight seams of denim are felled, the hem
	// and the band are kinds of their own.
	for _, s := range chosen(t, shelf, jobFor(garmentOf(t, "pull-on-skirt"), "denim", "denim"), serger).Seams {
		if alike(s.Because) {
			t.Errorf("%s is the only one of its kind, and yet: %q", s.Name, s.Because)
		}
	}
}

// What the wish for quick, neat or strong work changes, with the words for it.
// Neat: French seams, hems without a row that shows. Strong: felled seams.
// Quick: what the overlocker does in one pass. All common practice, no source.
func TestFavours(t *testing.T) {
	shelf := loadShelf(t)
	lock, serger, all := rooms()[0], rooms()[3], rooms()[4]
	for _, tt := range []struct {
		cloth      string
		room       *process.Workroom
		seam       string
		favour     string
		plain, won string
	}{
		{"cotton-poplin", lock, "side", "neat", "plain-open-clean-finished", "french"},
		{"linen-medium", lock, "hem", "neat", "deep-double-fold", "blind-stitched-by-hand"},
		{"linen-medium", rooms()[2], "side", "strong", "plain-open-zigzagged", "flat-felled"},
		{"wool-flannel", lock, "side", "quick", "plain-open-hand-overcast", "plain-open-pinked"},
		{"silk-satin", serger, "side", "quick", "french", "plain-together-overlocked"},
		{"linen-medium", all, "side", "quick", "plain-open-overlocked", "plain-together-overlocked"},
	} {
		j := jobFor(garmentOf(t, "pull-on-skirt"), tt.cloth, "cotton-lawn")
		plain := seamOf(t, chosen(t, shelf, j, tt.room), tt.seam)
		j.Favour = text(tt.favour)
		byJob := seamOf(t, chosen(t, shelf, j, tt.room), tt.seam)
		j.Favour = text("")
		room := *tt.room
		room.Favour = text(tt.favour)
		byRoom := seamOf(t, chosen(t, shelf, j, &room), tt.seam)
		if plain.Construction != tt.plain || byJob.Construction != tt.won || byRoom.Construction != tt.won {
			t.Errorf("%s, %s of %s in %s: from %s to %s by the job and %s by the room", tt.favour, tt.seam, tt.cloth, tt.room.Name,
				plain.Construction, byJob.Construction, byRoom.Construction)
		}
		said := strings.Join(byJob.Because, "; ")
		r, _ := rejectedAs(byJob, tt.plain)
		if all := said + strings.Join(r.Because, "; "); !strings.Contains(all, tt.favour+" work is favoured, and ") {
			t.Errorf("%s, %s of %s: no reason tells of the wish: %q, %q", tt.favour, tt.seam, tt.cloth, byJob.Because, r.Because)
		}
		if !strings.Contains(said, "without the wish for "+tt.favour+" work it would be: "+strings.ToLower(plain.ConstructionTitle[:1])) &&
			!strings.Contains(said, "without the wish for "+tt.favour+" work it would be: "+plain.ConstructionTitle) {
			t.Errorf("%s, %s of %s: %q does not tell what it would be otherwise", tt.favour, tt.seam, tt.cloth, byJob.Because)
		}
	}
}

// The wish for quick work makes no seam take longer, whatever the cloth; seams
// are looked at by themselves, so that likeness plays no part.
func TestQuickIsNotSlower(t *testing.T) {
	shelf := loadShelf(t)
	for _, w := range []*process.Workroom{rooms()[0], rooms()[1], rooms()[4]} {
		for _, cloth := range []string{"boiled-wool", "cotton-poplin", "denim-light", "silk-georgette", "viscose-challis", "linen-medium", "cotton-jersey"} {
			j := jobFor(garmentOf(t, "pull-on-skirt"), cloth, "cotton-lawn")
			plain := chosen(t, shelf, j, w)
			j.Favour = text("quick")
			for i, s := range chosen(t, shelf, j, w).Seams {
				if was := plain.Seams[i]; s.Minutes > was.Minutes+0.5 {
					t.Errorf("%s of %s in %s: %s in %.1f minutes, and without the wish %s in %.1f", s.Name, cloth, w.Name,
						s.Construction, s.Minutes, was.Construction, was.Minutes)
				}
			}
		}
	}
}
