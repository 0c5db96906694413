package crew_test

import (
	"context"
	"strings"
	"testing"

	"bodkin/process/crew"
)

func TestFaultsAreNamed(t *testing.T) {
	needs := []crew.Need{{Skill: 0}}
	one := []crew.Person{{Skills: []int{1}}}
	free := crew.Task{Time: 1, Kind: crew.None}
	for name, c := range map[string]struct {
		p    crew.Problem
		want string
	}{
		"nobody": {crew.Problem{Tasks: []crew.Task{{Time: 1, Kind: crew.None, Needs: needs}}}, "task 0: nobody can do need 0"},
		"level": {crew.Problem{People: one, Tasks: []crew.Task{{Time: 1, Kind: crew.None, Needs: []crew.Need{{Level: 2}}}}},
			"task 0: nobody can do need 0"},
		"two of one": {crew.Problem{People: one, Tasks: []crew.Task{{Time: 1, Kind: crew.None, Needs: []crew.Need{{Count: 2}}}}},
			"task 0: there are not enough people"},
		"short hours": {crew.Problem{
			People: []crew.Person{{Skills: []int{1}, Hours: []crew.Span{{0, 3}, {4, 7}}}},
			Tasks:  []crew.Task{{Time: 4, Kind: crew.None, Needs: needs}},
		}, "task 0: nobody who can do it is there for long enough"},
		"no hours": {crew.Problem{People: []crew.Person{{Hours: []crew.Span{}}}}, "person 0: has no hours"},
		"hours back": {crew.Problem{People: []crew.Person{{Hours: []crew.Span{{5, 4}}}}},
			"person 0: hours from 5 until 4"},
		"circle": {crew.Problem{Tasks: []crew.Task{{Kind: crew.None, After: []int{1}}, {Kind: crew.None, From: []int{0}}}},
			"tasks wait in a circle: [0 1]"},
		"no machine":  {crew.Problem{Kinds: []crew.Kind{{}}, Tasks: []crew.Task{{}}}, "task 0: there is no machine of kind 0"},
		"no kind":     {crew.Problem{Tasks: []crew.Task{{}}}, "task 0: kind is 0"},
		"too much":    {crew.Problem{Resources: []int64{1}, Tasks: []crew.Task{{Kind: crew.None, Uses: []int64{2}}}}, "task 0: takes 2 of resource 0"},
		"pace":        {crew.Problem{People: []crew.Person{{Pace: -1}}}, "person 0: pace is -1"},
		"later":       {crew.Problem{Tasks: []crew.Task{free, {Kind: crew.None, After: []int{2}}}}, "task 1: waits for task 2"},
		"time":        {crew.Problem{Tasks: []crew.Task{{Kind: crew.None, Time: -1}}}, "task 0: time is -1"},
		"odd setting": {crew.Problem{Kinds: []crew.Kind{{}}, Machines: []crew.Machine{{}}, Tasks: []crew.Task{{Setting: []int{1}}}}, "task 0: 1 settings for 0 attributes"},
	} {
		_, err := crew.Solve(context.Background(), c.p, crew.Options{})
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

func TestNothingToDo(t *testing.T) {
	r, err := crew.Solve(context.Background(), crew.Problem{}, crew.Options{})
	if err != nil || r.Finish != 0 || !r.Proved || !r.Fewest {
		t.Errorf("%+v, %v", r, err)
	}
}

func TestHoursThatHoldNoPlan(t *testing.T) {
	p := crew.Problem{
		People: []crew.Person{{Skills: []int{1}, Hours: []crew.Span{{0, 5}}}},
		Tasks:  []crew.Task{{Time: 3, Kind: crew.None, Needs: []crew.Need{{}}}, {Time: 3, Kind: crew.None, Needs: []crew.Need{{}}}},
	}
	r, err := crew.Solve(context.Background(), p, crew.Options{})
	if err != nil || r.Places != nil || !r.Proved {
		t.Errorf("%+v, %v", r, err)
	}
}

func TestCheckFindsFaults(t *testing.T) {
	p := crew.Problem{
		Handover: 2,
		People:   []crew.Person{{Skills: []int{1}}, {Skills: []int{1}, Hours: []crew.Span{{0, 9}}}},
		Kinds:    []crew.Kind{{}},
		Machines: []crew.Machine{{}, {}},
		Tasks: []crew.Task{
			{Time: 3, Needs: []crew.Need{{}}},
			{Time: 3, Needs: []crew.Need{{}}, From: []int{0}},
		},
	}
	at := func(begin int64, person, machine int) crew.Place {
		return crew.Place{Begin: begin, Work: begin, End: begin + 3, People: []int{person}, Machine: machine}
	}
	for name, c := range map[string]struct {
		places []crew.Place
		want   string
	}{
		"sound":     {[]crew.Place{at(0, 0, 0), at(5, 1, 0)}, ""},
		"too soon":  {[]crew.Place{at(0, 0, 0), at(4, 1, 0)}, "task 1: begins at 4"},
		"away":      {[]crew.Place{at(0, 0, 0), at(7, 1, 0)}, "task 1: person 1 is not there"},
		"machine":   {[]crew.Place{at(0, 0, 0), at(3, 0, 2)}, "task 1: is at machine 2"},
		"too short": {[]crew.Place{{End: 2, People: []int{0}}, at(3, 0, 0)}, "task 0: takes from 0 to 2"},
		"nobody":    {[]crew.Place{{End: 3}, at(3, 0, 0)}, "task 0: people [] do not meet"},
		"missing":   {nil, "task 0: 0 places for 2 tasks"},
	} {
		_, err := crew.Check(p, c.places)
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.HasPrefix(err.Error(), c.want)) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
