package seams

import (
	"cmp"
	"runtime"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

// Verdict is what the rules say of a construction in one place of a garment.
type Verdict struct {
	Construction *Construction
	RuledOut     []string // why not, in words; none where it is allowed
	Lacks        []string // of these reasons, the stitches that nothing in the room forms
	Score        float64  // the worths for it less the worths against it
	For, Against []Reason
}

// Allowed reports whether nothing rules the construction out.
func (v Verdict) Allowed() bool { return len(v.RuledOut) == 0 }

// OnlyLacks reports whether nothing but a machine is missing.
func (v Verdict) OnlyLacks() bool { return len(v.Lacks) > 0 && len(v.Lacks) == len(v.RuledOut) }

// Reason is a rule that holds: its points and its words.
type Reason struct {
	Worth   float64
	Because string
}

// Weigh judges every construction of a kind ("join", "seam"; "edge", "hem")
// by the facts: ruled out by its rules, by a stitch that nothing in the room
// forms or by a missing iron; scored by what speaks for and against it. All
// are returned: the allowed before the ruled out, then the highest score, then
// by name. The error is a [form.Fault] in a rule, or names the nearest kind.
func (s *Shelf) Weigh(what, kind string, facts Facts) ([]Verdict, error) {
	kinds := kindsOf(what)
	if kinds == nil {
		return nil, &UnknownError{What: "kind of work", Name: what, Nearest: form.Nearest(what, []string{"join", "edge", "detail"})}
	}
	if !slices.Contains(kinds, kind) {
		return nil, &UnknownError{What: "kind of " + what, Name: kind, Nearest: form.Nearest(kind, kinds)}
	}
	facts = facts.usable()
	values := formula.ValuesOf(facts)
	var candidates []*Construction
	for i := range s.Constructions {
		if c := &s.Constructions[i]; c.For == what && c.Kind == kind {
			candidates = append(candidates, c)
		}
	}
	// Side by side, because the first judging of a construction compiles its rules.
	verdicts := make([]Verdict, len(candidates))
	errs := make([]error, len(candidates))
	var wg sync.WaitGroup
	hands := min(runtime.GOMAXPROCS(0), len(candidates))
	for h := range hands {
		wg.Go(func() {
			for i := h; i < len(candidates); i += hands {
				verdicts[i], errs[i] = s.judge(candidates[i], facts, values)
			}
		})
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	slices.SortFunc(verdicts, func(a, b Verdict) int {
		return cmp.Or(
			min(1, len(a.RuledOut))-min(1, len(b.RuledOut)),
			cmp.Compare(b.Score, a.Score),
			cmp.Compare(a.Construction.Name, b.Construction.Name))
	})
	return verdicts, nil
}

func (s *Shelf) judge(c *Construction, facts Facts, values formula.Values) (Verdict, error) {
	c, err := c.whole()
	if err != nil {
		return Verdict{}, err
	}
	v := Verdict{Construction: c}
	w := c.ready()
	for i, f := range w.ruledOut {
		holds, err := f.Holds(values)
		if err != nil {
			return Verdict{}, err
		}
		if holds {
			v.RuledOut = append(v.RuledOut, c.RuledOut[i].Because)
		}
	}
	for _, stitch := range c.Stitches {
		if why := s.unformed(stitch, facts.Workroom.Forms); why != "" {
			v.RuledOut, v.Lacks = append(v.RuledOut, why), append(v.Lacks, stitch)
		}
	}
	if c.Iron && !facts.Workroom.Iron {
		v.RuledOut = append(v.RuledOut, "there is no iron in the room, and this must be pressed as it is made")
	}
	if v.For, err = holding(c.SpeaksFor, w.speaksFor, values); err != nil {
		return Verdict{}, err
	}
	if v.Against, err = holding(c.SpeaksAgainst, w.speaksAgainst, values); err != nil {
		return Verdict{}, err
	}
	for _, r := range v.For {
		v.Score += r.Worth
	}
	for _, r := range v.Against {
		v.Score -= r.Worth
	}
	return v, nil
}

func holding(rules []Rule, fs []*formula.Formula, values formula.Values) ([]Reason, error) {
	var out []Reason
	for i, f := range fs {
		holds, err := f.Holds(values)
		if err != nil {
			return nil, err
		}
		if holds {
			out = append(out, Reason{rules[i].Worth, rules[i].Because})
		}
	}
	return out, nil
}

// unformed says that nothing in the room forms a stitch and what would; "" for
// a stitch that can be formed, by machine or by hand.
func (s *Shelf) unformed(stitch string, forms func(string) bool) string {
	if forms(stitch) {
		return ""
	}
	said := stitch
	if st, err := s.Stitch(stitch); err == nil {
		if st.Hand {
			return ""
		}
		said += " (" + inSentence(st.Title) + ")"
	}
	said = "nothing in the room forms the stitch " + said
	var would []string
	for _, industrial := range []bool{false, true} {
		for _, m := range s.Machines {
			if m.Industrial == industrial && slices.Contains(m.Forms, stitch) && len(would) < mostHelpers {
				would = append(would, withArticle(inSentence(m.Title)))
			}
		}
	}
	if len(would) == 0 {
		return said
	}
	return said + "; " + strings.Join(would, " or ") + " would"
}

// mostHelpers is how many machines are named that would form a stitch: those of
// the house first, then in the order of the shelf.
const mostHelpers = 2

// withArticle sets a or an before a word.
func withArticle(word string) string {
	if first, _ := utf8.DecodeRuneInString(word); strings.ContainsRune("aeiou", first) {
		return "an " + word
	}
	return "a " + word
}

// inSentence is a title as it stands inside a sentence.
func inSentence(title string) string {
	first, size := utf8.DecodeRuneInString(title)
	return string(unicode.ToLower(first)) + title[size:]
}

// hottest is the hottest setting of an iron, in dots (ISO 3758).
const hottest = 3

// usable are the facts with functions that can be called and the heat of the
// iron, where there is one.
func (f Facts) usable() Facts {
	if f.Workroom.Forms == nil {
		f.Workroom.Forms = func(string) bool { return false }
	}
	if f.Workroom.House == nil {
		f.Workroom.House = func(_ string, otherwise float64) float64 { return otherwise }
	}
	if f.Workroom.Iron && f.Workroom.Dots == 0 {
		f.Workroom.Dots = hottest
	}
	// Where nobody has told how a line runs, it may run where the cloth gives most.
	for _, l := range []*LineFacts{&f.Join, &f.Edge} {
		if l.Stretch == 0 {
			l.Stretch = f.Cloth.Stretch
		}
	}
	return f
}
