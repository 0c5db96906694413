package crew_test

import (
	"context"
	"fmt"

	"bodkin/process/crew"
)

// Two people share four tasks on two pieces; one machine must be set anew
// between them, and carrying a piece over takes 1.
func ExampleSolve() {
	p := crew.Problem{
		Handover: 1,
		People:   []crew.Person{{Skills: []int{2, 1}}, {Skills: []int{0, 1}, Pace: 150}},
		Kinds:    []crew.Kind{{Attributes: []crew.Attribute{{Change: [][]int64{{0, 3}, {3, 0}}}}}},
		Machines: []crew.Machine{{Kind: 0}},
		Tasks: []crew.Task{
			{Time: 4, Kind: crew.None, Needs: []crew.Need{{Skill: 1}}},
			{Time: 6, From: []int{0}, Needs: []crew.Need{{Skill: 0}}, Setting: []int{0}},
			{Time: 4, Kind: crew.None, Needs: []crew.Need{{Skill: 1}}},
			{Time: 5, From: []int{2}, Needs: []crew.Need{{Skill: 0, Level: 2}}, Setting: []int{1}},
		},
	}
	r, err := crew.Solve(context.Background(), p, crew.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, at := range r.Places {
		fmt.Println("task", i, "by", at.People, "from", at.Begin, "work", at.Work, "to", at.End)
	}
	fmt.Println("finish", r.Finish, "hand-overs", r.Handovers, "proved", r.Proved)
	// Output:
	// task 0 by [1] from 0 work 0 to 6
	// task 1 by [0] from 9 work 12 to 18
	// task 2 by [0] from 0 work 0 to 4
	// task 3 by [0] from 4 work 4 to 9
	// finish 18 hand-overs 1 proved true
}

// Check tells who waits for whom.
func ExampleCheck() {
	p := crew.Problem{
		Handover: 2,
		People:   []crew.Person{{Skills: []int{1}}, {Skills: []int{0, 1}}},
		Tasks: []crew.Task{
			{Time: 5, Kind: crew.None, Needs: []crew.Need{{Skill: 0}}},
			{Time: 3, Kind: crew.None, Needs: []crew.Need{{Skill: 1}}, From: []int{0}},
		},
	}
	account, err := crew.Check(p, []crew.Place{
		{Begin: 0, Work: 0, End: 5, People: []int{0}, Machine: crew.None},
		{Begin: 7, Work: 7, End: 10, People: []int{1}, Machine: crew.None},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%+v\n%+v\n", account.Handed, account.Waits)
	// Output:
	// [{From:0 To:1 Leaves:5 Arrive:7}]
	// [{Person:1 From:0 Until:7 Next:1 Cause:2 For:0}]
}
