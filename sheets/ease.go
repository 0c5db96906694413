package sheets

import (
	"math"
	"strings"
	"unicode"

	"bodkin/process"
)

// ReadingEase is how easily English words are read, by R. Flesch, A new
// readability yardstick, Journal of Applied Psychology 32 (1948) 221-233:
//
//	206.835 - 1.015 × words a sentence - 84.6 × syllables a word
//
// About 100 is very easy and 0 very hard. Syllables are counted by rule, not looked
// up. Text without a word gives 0.
func ReadingEase(text string) float64 {
	words, sentences, syllables := 0, 0, 0
	open := false // a sentence with a word in it
	for _, w := range strings.Fields(text) {
		if n := syllablesOf(w); n > 0 {
			words, syllables, open = words+1, syllables+n, true
		}
		if end := strings.TrimRight(w, `"')*`); open && end != "" && strings.ContainsRune(".!?:;", rune(end[len(end)-1])) {
			sentences, open = sentences+1, false
		}
	}
	if open {
		sentences++
	}
	if words == 0 {
		return 0
	}
	return 206.835 - 1.015*float64(words)/float64(sentences) - 84.6*float64(syllables)/float64(words)
}

// syllablesOf counts the groups of vowels in a word, without an e that is mute at
// its end; a figure counts as one. What has neither letter nor figure is no word.
func syllablesOf(word string) int {
	word = strings.ToLower(strings.TrimFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
	if word == "" {
		return 0
	}
	vowel := func(i int) bool { return i >= 0 && i < len(word) && strings.IndexByte("aeiouy", word[i]) >= 0 }
	n := 0
	for i := range len(word) {
		if vowel(i) && !vowel(i-1) {
			n++
		}
	}
	last := len(word) - 1
	mute := strings.HasSuffix(word, "e") && !vowel(last-1) && !(strings.HasSuffix(word, "le") && !vowel(last-2) && last >= 2)
	mute = mute || strings.HasSuffix(word, "ed") && last >= 2 && !vowel(last-2) && word[last-2] != 't' && word[last-2] != 'd'
	if mute && n > 1 {
		n--
	}
	return max(n, 1)
}

// easeOf is the reading ease of what a plan tells the hands to do.
func easeOf(p *process.Plan) float64 {
	var text strings.Builder
	for _, o := range p.Operations {
		text.WriteString(sentence(o.Text) + " " + sentence(o.Good) + " ")
	}
	return math.Round(ReadingEase(text.String()))
}

// easeWords are those of Flesch's table for a figure: the bands of ten from very
// easy to very hard.
func (c *composer) easeWords(ease float64) string {
	words := c.say.class.bands
	for k, least := range []float64{90, 80, 70, 60, 50, 30} {
		if ease >= least {
			return words[k]
		}
	}
	return words[len(words)-1]
}
