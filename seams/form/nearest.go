package form

import "strings"

// Nearest is the word among the given ones that is closest to word, by the
// fewest letters typed wrongly, left out, put in or swapped (capitals apart).
// It is "" where nothing is close: more than a third of the letters, and more
// than one, differ. Ties go to the word that comes first in among.
func Nearest(word string, among []string) string {
	best, bestDistance := "", 0
	w := []rune(strings.ToLower(word))
	if len(w) > 64 {
		return ""
	}
	for _, candidate := range among {
		c := []rune(strings.ToLower(candidate))
		if len(c) > 64 {
			continue
		}
		d := distance(w, c)
		if d > max(1, max(len(w), len(c))/3) || d >= max(len(w), len(c)) {
			continue
		}
		if best == "" || d < bestDistance {
			best, bestDistance = candidate, d
		}
	}
	return best
}

// distance is the optimal string alignment distance: Damerau–Levenshtein
// without a second edit inside a swapped pair.
func distance(a, b []rune) int {
	before, above, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
