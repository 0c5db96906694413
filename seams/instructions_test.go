package seams_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The laws of an instruction, held over the words of every pass on the shelf. Which
// side is up, how far from what, which way to press are what beginners miss in
// printed instructions (sewers' pages on pattern sheets, common practice); the words
// that carry it are the house's own: common practice, no source.
var (
	instructionName = regexp.MustCompile(`\{[a-z_]+\}`)
	instructionEnd  = regexp.MustCompile(`[.!?]( |$)`)
	instructionSide = regexp.MustCompile(`(?i)right sides?|wrong sides?|uppermost|underneath|together|single|under side|in the allowance|side (of|that|where)|each side`)
	instructionFrom = regexp.MustCompile(`\{[a-z_]+\}( wide,)?( and \{[a-z_]+\})? (from|beyond|outside|inside|past|off|wide|deep|square|of the edge)\b|every \{` +
		`|a thread (from|nearer|outside)|in the groove|on the (row|marks|raw edge|line)|(on|along|down) the seam line|from corner to corner|in line with the fold|half way between` +
		`|the knife|over its raw edge|slanting stitches|to the (row|hem|tapes?|allowances?|finished edge)|[Tt]rim the allowances? to|at each mark|in each (ring|hole)` +
		`|along (its|their) middle|in the middle of|along both edges|allowances of|side seams and shoulders`)
	instructionHand  = regexp.MustCompile(`\{[a-z_]+\} (long|apart|deep)|every \{|(two|three|four|six) (overcast )?stitches|a stitch beside every stitch|four times over`)
	instructionFace  = regexp.MustCompile(`(?i)wrong sides?|right sides?|under side|inner side|side of the`)
	instructionWay   = regexp.MustCompile(`\b(open|flat|towards|away from|to one side|under|inwards|outwards|in half|into|up|down|downwards|round|as it was|as they were|to the wrong side|the way they lie|over its row|to a fold)\b`)
	instructionVague = regexp.MustCompile(`(?i)\b(close(ly)? (to|beside)|near(ly)?|a little|a bit|slight(ly)?|just|narrow(ly)?|small|tiny|(short|long) stitch(es)?|about|some|several|a few|almost|roughly|approximately|well away|hardly|loosely|a hair)\b`)
	instructionSum   = regexp.MustCompile(`(?i)\b(less than the|more than the|half (their|its|the) (width|length|depth)|a quarter of|double the|twice the|times as|and its \{|plus|minus)\b`)
	instructionTwo   = regexp.MustCompile(`(?i)\b(pin|trim|turn|lay|wrap|fold|snip|clip|stitch|sew|baste)\b[^.;:]*\band (then )?(press|stitch|sew|baste|topstitch|edge-stitch|fell|backstitch|turn|trim|snip|clip)\b`)
	goodVague        = regexp.MustCompile(`(?i)\b(a little|a bit|slight(ly)?|about|nearly|almost|hardly|close to)\b`)
)

// mostWords is how long a sentence may be, a figure counting as one word. The
// bound is the house's own: shorter sentences are read more easily (R. Flesch, A
// new readability yardstick, Journal of Applied Psychology 32 (1948)).
const mostWords = 26

// imperatives are what a sentence may begin with, after the place it speaks of.
var imperatives = strings.Fields(`back backstitch baste begin blind-stitch bring buttonhole cast catch catch-stitch chalk close cover-stitch cut
	do draw ease edge-stitch fasten fell finish flatten fold follow fuse go grade guide handle hang hold join keep knot lap lay leave let lift lower make mark
	melt notch open overcast overlap overlock pick pin pink press prick-stitch push put release roll run secure see set sew shrink slash slip slip-stitch
	snip spread stay staystitch steady steam stick stitch stop stretch tack take topstitch touch trim try turn understitch use wind work wrap zigzag`)

// leads are what a place or a condition begins with that goes before the act.
var leads = strings.Fields(`above after along and at between edge for from hollow if in inside lower nowhere on or outside over right round then through under where with without`)

// pardoned are passes that cannot keep a law, by words of theirs, each with its
// reason.
var pardoned = []struct{ construction, words, law, because string }{
	{"button", "wind the thread", "from", "the thread goes round the shank, and no edge is near"},
}

// sentencesOf are the sentences of a text, each name in braces as one figure.
func sentencesOf(text string) []string {
	text = instructionName.ReplaceAllString(text, "7")
	var out []string
	for _, at := range instructionEnd.FindAllStringIndex(text, -1) {
		done := len(strings.Join(out, ""))
		out = append(out, text[done:at[1]])
	}
	return out
}

// imperative reports whether a sentence begins with an act, or with a place and
// then an act.
func imperative(sentence string) bool {
	for _, clause := range strings.FieldsFunc(sentence, func(r rune) bool { return strings.ContainsRune(",:;.", r) }) {
		words := strings.Fields(strings.ToLower(clause))
		if len(words) == 0 {
			continue
		}
		if slices.Contains(imperatives, words[0]) {
			return true
		}
		if words[0] == "then" && len(words) > 1 && slices.Contains(imperatives, words[1]) {
			return true
		}
		if !slices.Contains(leads, words[0]) {
			return false
		}
	}
	return false
}

func TestInstructionsSayWhatTheHandsNeed(t *testing.T) {
	s := load(t)
	used := make([]bool, len(pardoned))
	passes := 0
	for _, c := range s.Constructions {
		for i, p := range c.Passes {
			passes++
			at := c.Name + "." + strconv.Itoa(i+1)
			breaks := func(law, why string) {
				for k, pardon := range pardoned {
					if pardon.construction == c.Name && pardon.law == law && strings.Contains(p.Text, pardon.words) {
						used[k] = true
						return
					}
				}
				t.Errorf("%s, %s, %s: %s", at, p.Does, why, p.Text)
			}
			plain := instructionName.ReplaceAllString(p.Text, "7")
			if !strings.HasSuffix(p.Text, ".") {
				breaks("end", "does not end its sentence")
			}
			for _, sentence := range sentencesOf(p.Text) {
				if n := len(strings.Fields(sentence)); n > mostWords {
					breaks("long", "a sentence of "+strconv.Itoa(n)+" words")
				}
				if !imperative(sentence) {
					breaks("imperative", "does not begin with an act: "+sentence)
				}
			}
			for law, r := range map[string]*regexp.Regexp{"vague": instructionVague, "sum": instructionSum, "two": instructionTwo} {
				if found := r.FindString(plain); found != "" {
					breaks(law, "says "+found)
				}
			}
			if found := goodVague.FindString(p.Good); found != "" {
				breaks("good", "looks right "+found)
			}
			act, err := s.Act(p.Does)
			if err != nil {
				t.Fatal(err)
			}
			switch {
			case p.Does == "press":
				if !instructionFace.MatchString(p.Text) {
					breaks("face", "does not say from which side")
				}
				if !instructionWay.MatchString(p.Text) {
					breaks("way", "does not say which way")
				}
			case p.Stitch != "" && p.Does != "test":
				if p.Does != "baste" && !instructionSide.MatchString(p.Text) {
					breaks("side", "does not say which side is up or how the plies lie")
				}
				if !instructionFrom.MatchString(p.Text) {
					breaks("from", "does not say how far from what")
				}
				if act.Station == "hand" && !instructionHand.MatchString(p.Text) {
					breaks("stitch", "does not say how long or how far apart the stitches are")
				}
			}
		}
	}
	if passes < 900 {
		t.Errorf("%d passes read", passes)
	}
	for k, pardon := range pardoned {
		if !used[k] || pardon.because == "" {
			t.Errorf("%s, %q needs no pardon of the law %q, or has it without a reason", pardon.construction, pardon.words, pardon.law)
		}
	}
}

// The laws find what breaks them: worked sentences, our own.
func TestInstructionLawsBite(t *testing.T) {
	for _, tt := range []struct {
		law  *regexp.Regexp
		text string
		want bool
	}{
		{instructionVague, "Stitch close to the fold.", true},
		{instructionVague, "Stretch it a little.", true},
		{instructionVague, "Stitch {near} from the fold.", true}, // names are put as figures first
		{instructionVague, "Stitch 7 from the fold.", false},
		{instructionSum, "Trim the allowances to half their width.", true},
		{instructionSum, "Turn it under, 7 less than the seam.", true},
		{instructionTwo, "Turn the facing inside and press it.", true},
		{instructionTwo, "Trim, turn and press.", true},
		{instructionTwo, "Press the fold from the wrong side.", false},
		{instructionFace, "Press the allowances open.", false},
		{instructionWay, "From the wrong side, press the seam.", false},
		{instructionSide, "Stitch {seam} from the edge.", false},
		{instructionHand, "Fell the fold to the row by hand.", false},
		{instructionFrom, "Stitch round the pocket, each stitch {short} long.", false},
		{instructionFrom, "Stitch {near} from its edge.", true},
	} {
		if got := tt.law.MatchString(tt.text); got != tt.want {
			t.Errorf("%q: %v", tt.text, got)
		}
	}
	for sentence, want := range map[string]bool{
		"Lay it flat.": true, "From the wrong side, press it.": true, "At the waist, from the right side, snip it.": true,
		"The seam lies open.": false, "From here it is one.": false, "Then press it open.": true, "With a foot, the row is sewn.": false,
	} {
		if got := imperative(sentence); got != want {
			t.Errorf("%q: %v", sentence, got)
		}
	}
	if got := sentencesOf("Lay {a} on {b}. Pin."); len(got) != 2 || got[1] != "Pin." {
		t.Errorf("%q", got)
	}
}

// The other words that the hands go by keep the laws that fit them: how a cloth is
// pressed, and how interfacing is put on.
func TestOtherInstructionsAreShortAndPlain(t *testing.T) {
	s := load(t)
	texts := map[string]string{}
	for _, p := range s.Pressing {
		texts["pressing "+p.Name] = p.Text
	}
	for _, i := range s.Interfacings {
		texts["attach "+i.Name] = i.Attach
	}
	if len(texts) < 20 {
		t.Fatalf("%d texts read", len(texts))
	}
	for name, text := range texts {
		if found := instructionVague.FindString(text); found != "" {
			t.Errorf("%s says %q: %s", name, found, text)
		}
		for _, sentence := range sentencesOf(text) {
			if n := len(strings.Fields(sentence)); n > mostWords {
				t.Errorf("%s has a sentence of %d words: %s", name, n, sentence)
			}
			if !imperative(strings.TrimPrefix(sentence, "Never ")) && !imperative(sentence) {
				t.Errorf("%s does not begin with an act: %s", name, sentence)
			}
		}
	}
}
