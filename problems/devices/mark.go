package devices

import "slices"

// marksOf are the stations of the drawing that may be marked as the place of
// a fault: what was put in, turned or changed; next to what is missing; and
// the device that the fault itself names.
func (d *Detail) marksOf(f *Fault) []Spot {
	sound, faulty := d.Clone(), d.With(f)
	var spots []Spot
	add := func(run string, at int) {
		r := faulty.run(run)
		if s := (Spot{run, at}); r != nil && at >= 0 && at < len(r.Stand) && !slices.Contains(spots, s) {
			spots = append(spots, s)
		}
	}
	for i := range faulty.Runs {
		r := &faulty.Runs[i]
		was := sound.run(r.Name)
		if was == nil {
			for at := range r.Stand {
				add(r.Name, at)
			}
			continue
		}
		for _, at := range changed(was.Stand, r.Stand) {
			add(r.Name, at)
		}
		if of := faulty.run(r.Of); of != nil && slices.EqualFunc(of.Stand, sound.run(r.Of).Stand, Station.same) && (was.After != r.After || was.Join != r.Join) {
			for at := range r.Stand {
				add(r.Name, at)
			}
		}
	}
	for _, r := range sound.Runs {
		if faulty.run(r.Name) == nil {
			add(r.Of, r.After)
			add(r.Of, r.Join)
		}
	}
	if r := faulty.run(f.Run); r != nil && r.count(f.At) == 1 {
		add(f.Run, r.at(f.At))
	}
	return spots
}

// changed are the stations of now that stand otherwise than before, and the
// neighbours of those that are gone.
func changed(before, now []Station) []int {
	kept := common(before, now)
	kept = append(kept, [2]int{len(before), len(now)})
	var gone, fresh []int // of before; of now
	var gaps []int        // where in now each of gone was
	i, j := 0, 0
	for _, k := range kept {
		for ; i < k[0]; i++ {
			gone, gaps = append(gone, i), append(gaps, j)
		}
		for ; j < k[1]; j++ {
			fresh = append(fresh, j)
		}
		i, j = k[0]+1, k[1]+1
	}
	list := slices.Clone(fresh)
	for n, g := range gone {
		at := gaps[n]
		moved := slices.IndexFunc(fresh, func(k int) bool { return now[k].Device == before[g].Device })
		switch {
		case moved < 0 && !slices.Contains(fresh, at):
			list = append(list, at-1, at)
		case moved >= 0 && (fresh[moved] == at+1 || fresh[moved] == at-1):
			list = append(list, at)
		}
	}
	return list
}

// common pairs the stations that two lists have in the same order, as many as
// can be.
func common(a, b []Station) [][2]int {
	long := make([][]int, len(a)+1)
	for i := range long {
		long[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i].same(b[j]) {
				long[i][j] = long[i+1][j+1] + 1
			} else {
				long[i][j] = max(long[i+1][j], long[i][j+1])
			}
		}
	}
	var pairs [][2]int
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i].same(b[j]):
			pairs = append(pairs, [2]int{i, j})
			i, j = i+1, j+1
		case long[i+1][j] >= long[i][j+1]:
			i++
		default:
			j++
		}
	}
	return pairs
}

func (s Station) same(o Station) bool {
	return s.Device == o.Device && s.Turned == o.Turned && slices.Equal(s.Marks, o.Marks)
}
