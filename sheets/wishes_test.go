package sheets

import (
	"strings"
	"testing"

	"bodkin/process"
)

// What is proved of an order that keeps to wishes is proved of changes and wishes
// together, and the sheet says so wherever it speaks of the proof.
func TestProofWithWishes(t *testing.T) {
	p := *plans(t)[0].plan
	p.Order.Proved = true
	alone := string(Compose(&p, Options{}).Markdown)
	p.Order.Wishes = []process.Wished{{Wish: "small", Minutes: 2, Paid: 1}}
	together := string(Compose(&p, Options{}).Markdown)
	const words = "counted together"
	if n := strings.Count(spaced(alone), words); n != 0 {
		t.Errorf("without wishes the sheet says %q %d times", words, n)
	}
	if n := strings.Count(spaced(together), words); n != 2 {
		t.Errorf("with a wish the sheet says %q %d times, want at its head and in the account of the order", words, n)
	}
}
