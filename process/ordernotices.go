package process

import (
	"fmt"
	"strings"
)

// orderNotices tell what the order of the work rests on besides the garment:
// what is done already, where the maker's own order could not be kept, and whether
// the search was ended.
func (o *operator) orderNotices(plan *Plan) []Notice {
	var out []Notice
	if b := plan.Begun; b != nil {
		text := fmt.Sprintf("Of the work %s done already; the steps are planned anew from there and numbered from 1, each with the number that it had in the plan begun with.", countWords(len(b.Done), "operation is", "operations are"))
		if len(b.Also) > 0 {
			text += " Not named, but taken to be done because what was named waits for it: " + strings.Join(b.Also, ", ") + "."
		}
		out = append(out, Notice{About: "begun", Text: text})
	}
	out = append(out, o.bobbinNotices(plan)...)
	if own := plan.Order.Own; own != nil {
		for _, r := range own.Refused {
			out = append(out, Notice{About: "your order",
				Text: fmt.Sprintf("%s cannot come before %s: %s. The rest of your order is kept.", upperFirst(r.First), r.Then, o.say(r.Because))})
		}
	}
	if !plan.Order.Proved {
		out = append(out, Notice{About: "order",
			Text: "The search for the order was stopped before it could prove that no cheaper order exists."})
	}
	return out
}

func countWords(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
