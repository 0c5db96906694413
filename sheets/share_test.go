package sheets_test

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/sheets"
)

// smallShare is a share of three operations between two people.
func smallShare() *process.Share {
	op := func(id, part, text string) process.Operation {
		return process.Operation{ID: id, Part: part, Seam: part, Text: text, Good: "It is even."}
	}
	return &process.Share{
		Garment: "Bag", Title: "Two * bags", Workroom: "Hall", Begins: "9:00", Finish: 75, Alone: 100, Bound: 75, Proved: true, Fewest: true,
		People: []process.Bench{
			{Name: "Ada", Until: 120, Busy: 50, Waiting: 15.5, Turns: []process.Turn{
				{Operation: op("side.1", "side", "Stitch the side."), Number: 1, Begin: 0, Work: 3, End: 30, Machine: "Machine",
					To:    []process.Passing{{Operation: "side.2", Number: 2, Person: "Bea"}},
					Asked: []process.Asked{{Skill: "delicate", Title: "delicate cloth", Level: 1, Because: []string{"the cloth slips"}}}},
				{Operation: op("hem.1", "hem", "Stitch the hem."), Number: 3, Begin: 55.5, Work: 55.5, End: 75, Machine: "Machine",
					Wait: &process.Waiting{Minutes: 15.5, For: "side.2", Person: "Bea", Cause: "coming", Meantime: "Wind a bobbin."},
					From: []process.Passing{{Operation: "side.2", Number: 2, Person: "Bea"}}},
			}},
			{Name: "Bea", Until: 120, Busy: 20, Turns: []process.Turn{
				{Operation: op("side.2", "side", "Press the side."), Number: 2, Begin: 31, Work: 31, End: 54.5, Machine: "Iron"}}},
			{Name: "Cyd", Until: 60},
		},
		Machines: []process.MachineRow{{Title: "Machine", Turns: []int{1, 3}}, {Title: "Iron", Turns: []int{2}}},
		Handed: []process.HandOver{
			{At: 30, Part: "side", From: "Ada", To: "Bea", After: "side.1", Next: "side.2"},
			{At: 54.5, Part: "hem", From: "Bea", To: "Ada", After: "side.2", Next: "hem.1"}},
		GiveAway: []process.Given{{Person: "Bea", Frees: 12.5, Takes: 20, Finish: 80, Handovers: 2, Operations: []process.GivenTurn{
			{Operation: "side.2", Does: "hand-stitch", Part: "side", Begin: 31, Minutes: 20}}}, {Person: "Cyd"}},
		Extras:  []process.Extra{{What: "one more machine", Finish: 70, Saves: 5}},
		Notices: []process.Notice{{About: "minutes", Text: "Minutes are estimates."}},
		Plan: &process.Plan{
			Seams:    []process.Seam{{Name: "side", Title: "side", Construction: "french", ConstructionTitle: "French seam", Allowance: 15, Finished: 6}},
			Checks:   []process.Check{{AfterOperation: "side.2", What: "width of the finished seam", Expect: 6, Tolerance: 1}},
			Cautions: []process.Caution{{Text: "Keep fingers clear of the needle.", Why: "It goes through them."}},
		},
	}
}

// TestShareTellsWhoWaitsForWhom: each bench says what comes from whom, goes to
// whom, and what to do meanwhile; the maker's page has every hand-over.
func TestShareTellsWhoWaitsForWhom(t *testing.T) {
	sheet := sheets.ComposeShare(smallShare(), sheets.Options{FiguresAt: "figures/"})
	text := strings.Join(strings.Fields(strings.ReplaceAll(string(sheet.Markdown), "\n> ", " ")), " ")
	for _, want := range []string{
		`# Two \* bags: shared work`, "shared among Ada, Bea and Cyd in Hall", "all is done after **1:15**", "proved",
		"Ada alone would need 1:40; the help saves her 25 min.",
		"**Hand on to Bea, number 2.**", "Comes from Bea, number 2.", "15.5 min to wait, for number 2 by Bea. Wind a bobbin.",
		"Asks for delicate cloth, level 1: the cloth slips.", "3 min to set up", "**0:55 · 3 · Machine: hem**",
		"To **Bea**: it takes 12.5 min off the maker's hands, with 2 hand-overs; all is done after 1:20.", "Hand stitch",
		"To Cyd: nothing that is worth carrying",
		"Ada, after 1", "Bea, for 2", "one more machine", "Nothing here asks for her skills", "Minutes are estimates.",
		"**Side** – French seam; cut with 15 mm of allowance, 6 mm wide when finished.", "**Check.** Width of the finished seam: 6 mm, give or take 1 mm", "**Keep fingers clear of the needle.** It goes through them.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet lacks %q", want)
		}
	}
	if len(sheet.Figures) != 1 || sheet.Figures[0].Figure.Check() != nil {
		t.Fatalf("%d figures", len(sheet.Figures))
	}
	if svg := string(sheet.Figures[0].Figure.SVG()); !strings.Contains(svg, "Ada") || !strings.Contains(svg, "Machine") {
		t.Error("the picture of the day lacks a row")
	}
}
