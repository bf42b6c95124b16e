package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// LoopWater is the recirculation of one zone, solved as a network: the supply
// main along the feet of the risers, up each riser and back down beside it
// through a balancing valve, and the return main to the circulator.
type LoopWater struct {
	Zone     int
	Risers   []LoopRiser // nearest to the heater first
	Flow     unit.Flow   // of the circulator
	Asked    unit.Flow   // that keeps the drop
	Heat     unit.Power  // lost by all its pipe
	Supply   unit.Temperature
	Return   unit.Temperature // back at the heater
	Head     unit.Length      // that the asked flow needs in the worst circuit
	Pump     PumpCurve
	Point    Duty // where the pump really runs
	Mass     float64
	Energy   float64 // how well the network closes
	Length   unit.Length
	NoReach  bool // the pump told cannot drive the asked flow
	Network  *Network
	Solution *Flows
}

// LoopRiser is one riser of a loop.
type LoopRiser struct {
	Flow, Asked unit.Flow
	Length      unit.Length   // up and back
	Loss        unit.Pressure // of its circuit at the asked flow, without its valve
	Valve       float64       // Cv that its balancing valve is set to
	Drop        unit.Pressure // in the valve at the asked flow
	Foot, Top   unit.Temperature
	Back        unit.Temperature // at the end of its return
}

// Practice of loops; no source beyond it.
const (
	leastRiserFlow = 0.5 * unit.GPM
	usualDrop      = unit.TempDifference(5.0 * 5 / 9) // from the heater round to it
	valveAtLeast   = 0.5 * unit.PSI                   // in the balancing valve of the worst circuit
	pumpShut       = 1.25                             // head at no flow over that at duty
	leastReturn    = 51                               // °C
)

// loopPlan is the loop of one zone in lengths, bores and heat losses.
type loopPlan struct {
	risers               int
	gap                  unit.Length // of the mains from riser to riser, and to the first
	rise                 unit.Length // of a riser
	main, up, back       *Tube
	mainLoss, upLoss     float64 // W/m
	backLoss             float64
	drop                 unit.TempDifference
	asked                unit.Flow // of each riser
	fittings, smoothness float64
}

// loops works the loop of each zone with hot water out.
func (w *Whole) loops(t *tree) error {
	if t.b.Loop == nil || !t.b.loaded() {
		return nil
	}
	for z := range t.b.Zones {
		if !t.hotZone(z) {
			continue
		}
		l, err := w.loop(t, z)
		if err != nil {
			return err
		}
		w.Loops = append(w.Loops, l)
	}
	return nil
}

func (w *Whole) loop(t *tree, z int) (LoopWater, error) {
	p := w.loopPlan(t, z)
	l := LoopWater{Zone: z, Supply: w.Hot.Delivered, Asked: p.asked * unit.Flow(p.risers)}
	l.Length = 2 * (p.gap + p.rise) * unit.Length(p.risers)
	p.balance(&l, t)
	valve := w.loopValve(t, l.Asked)
	l.Head = CirculatorHead(loopWaters.Column(), p.worst(l), valve.lost)
	if told := t.b.Loop.Pump; told != nil {
		l.Pump = *told
		l.NoReach = told.Head(l.Asked) < l.Head*(1-1e-9)
	} else {
		q := float64(l.Asked)
		l.Pump = PumpCurve{Shut: pumpShut * l.Head, Bend: -(pumpShut - 1) * float64(l.Head) / q / q}
	}
	l.Network = p.network(&l, valve)
	flows, err := l.Network.Solve()
	if err != nil {
		return l, fmt.Errorf("solver: loop of zone %s: %w", t.b.Zones[z].Name, err)
	}
	l.Solution, l.Mass, l.Energy = flows, flows.Mass, flows.Energy
	p.read(&l, w.Hot.PerVolume)
	l.Point = Duty{l.Flow, l.Pump.Head(l.Flow)}
	return l, nil
}

// loopPlan takes the pipes of a zone's loop off its hot risers, or off the
// lengths and losses that the building tells.
func (w *Whole) loopPlan(t *tree, z int) loopPlan {
	told := t.b.Loop
	p := loopPlan{risers: orUsual(told.Risers, t.pipe.Risers), drop: orUsual(told.Drop, usualDrop), fittings: 1 + t.pipe.Fittings, smoothness: t.pipe.C}
	p.gap = t.pipe.Offset / unit.Length(p.risers)
	warm := float64(w.Hot.Delivered-roomTemperature) / float64(unit.Fahrenheit(140)-roomTemperature)
	supply, heat := unit.Length(0), 0.0
	for i := range t.s {
		s := &t.s[i]
		if s.Zone != z || !s.Hot || s.Kind == BranchStretch {
			continue
		}
		if s.Kind == HeaterStretch {
			p.main, p.mainLoss = s.Tube, pipeHeat(s.Tube)*warm
			continue
		}
		supply += t.run(s)
		heat += pipeHeat(s.Tube) * warm * float64(t.run(s))
		p.up = s.Tube
	}
	p.rise = max(supply, 0.1*unit.Metre)
	p.upLoss = heat / float64(p.rise)
	if supply <= 0 {
		p.upLoss = pipeHeat(p.up) * warm
	}
	if t.oneHotZone() && told.Supply > 0 {
		p.rise = max(0.1*unit.Metre, told.Supply/unit.Length(p.risers)-p.gap)
	}
	if told.SupplyLoss > 0 {
		p.mainLoss, p.upLoss = told.SupplyLoss, told.SupplyLoss
	}
	p.back = returnTube(leastRiserFlow, p.smoothness)
	for range 2 { // more flow asks for a larger return, which loses more
		p.backLoss = orUsual(told.ReturnLoss, pipeHeat(p.back)*warm)
		lost := float64(p.gap)*(p.mainLoss+p.backLoss) + float64(p.rise)*(p.upLoss+p.backLoss)
		p.asked = max(leastRiserFlow, CirculationFlow(unit.Power(lost), w.Hot.PerVolume, p.drop))
		p.back = returnTube(p.asked, p.smoothness)
	}
	p.backLoss = orUsual(told.ReturnLoss, pipeHeat(p.back)*warm)
	return p
}

func (t *tree) oneHotZone() bool {
	n := 0
	for z := range t.b.Zones {
		if t.hotZone(z) {
			n++
		}
	}
	return n == 1
}

// returnTube is the smallest tube that takes a flow at 3 ft/s, not under 1/2.
func returnTube(q unit.Flow, c float64) *Tube {
	for i := range Tubes {
		bore := Tubes[i].Bore(TypeL)
		if PipeVelocity(q, bore, RoundPipe) <= 3*unit.Velocity(unit.Foot) && HazenSI.Loss(q, c, bore) <= UsualPiping.Friction {
			return &Tubes[i]
		}
	}
	return &Tubes[len(Tubes)-1]
}

// pipeHeat is what insulated pipe loses in W/m at 140 °F in a room of 70 °F;
// a tube larger than the table loses as its largest.
func pipeHeat(t *Tube) float64 {
	last := 0.0
	for _, row := range HeatLosses {
		last = row.Insulated * float64(unit.BtuHour) / float64(unit.Foot)
		if t != nil && row.Nominal == t.Nominal {
			break
		}
	}
	return last
}

// pipe is a length of a tube in the loop, fittings added.
func (p loopPlan) pipe(l unit.Length, t *Tube) HazenPipe {
	return HazenPipe{Length: max(l, 1e-3) * unit.Length(p.fittings), Bore: t.Bore(TypeL), C: p.smoothness}
}

func lossAt(part Part, q unit.Flow, w Water) unit.Pressure {
	pa, _ := part.drop(float64(q), w)
	return unit.Pressure(pa)
}

// mainTubes are the tubes of the return main, by how many risers it carries.
func (p loopPlan) mainTubes() []*Tube {
	list := make([]*Tube, p.risers+1)
	for n := 1; n <= p.risers; n++ {
		list[n] = returnTube(p.asked*unit.Flow(n), p.smoothness)
	}
	return list
}

// balance works the circuits out at the asked flows and sets the valves: each
// takes what the worst circuit loses more than its own.
func (p loopPlan) balance(l *LoopWater, t *tree) {
	w := loopWaters
	main := unit.Pressure(0)
	tubes := p.mainTubes()
	for r := range p.risers {
		carried := unit.Flow(p.risers-r) * p.asked
		main += lossAt(p.pipe(p.gap, p.main), carried, w) + lossAt(p.pipe(p.gap, tubes[p.risers-r]), carried, w)
		own := lossAt(p.pipe(p.rise, p.up), p.asked, w) + lossAt(p.pipe(p.rise, p.back), p.asked, w)
		l.Risers = append(l.Risers, LoopRiser{Asked: p.asked, Length: 2 * p.rise, Loss: main + own})
	}
	worst := l.Risers[len(l.Risers)-1].Loss
	for r := range l.Risers {
		riser := &l.Risers[r]
		riser.Drop = worst - riser.Loss + valveAtLeast
		riser.Valve = CvUnit.Factor(p.asked, riser.Drop)
	}
}

// loopWaters is the water of the loops' friction: that of 60 °F, which flow
// factors of valves are told for.
var loopWaters = Water{Density: 999.0, Viscosity: 1.1e-3, Heat: 4188}

func (p loopPlan) worst(l LoopWater) unit.Pressure {
	return l.Risers[len(l.Risers)-1].Loss + valveAtLeast
}

// loopDevice is what stands in the common part of the loop: heater and mixing
// valve.
type loopDevice struct {
	lost unit.Pressure
	cv   float64
}

func (w *Whole) loopValve(t *tree, q unit.Flow) loopDevice {
	d := loopDevice{lost: t.b.Loop.ValveInLoop + 1*unit.PSI}
	d.cv = CvUnit.Factor(q, d.lost)
	return d
}

// network lays the loop out: nodes 0 before and 1 behind the circulator, then
// for each riser its foot, its top, the foot of its return, and the return
// main there. Height is left out: the loop is closed, and its water is taken
// as of one density.
func (p loopPlan) network(l *LoopWater, common loopDevice) *Network {
	n := &Network{Water: loopWaters, Nodes: []Node{{Name: "return at the heater", Held: true, Pressure: 100 * unit.Kilopascal}, {Name: "circulator"}, {Name: "supply"}}}
	link := func(name string, from, to int, part Part) {
		n.Links = append(n.Links, Link{Name: name, From: from, To: to, Part: part})
	}
	link("circulator", 0, 1, Pump{l.Pump})
	link("heater", 1, 2, Throttle{common.cv})
	tubes := p.mainTubes()
	foot, back := 2, 0
	for r := range l.Risers {
		at := len(n.Nodes)
		n.Nodes = append(n.Nodes, Node{Name: "foot"}, Node{Name: "top"}, Node{Name: "back"}, Node{Name: "return"})
		link("supply main", foot, at, p.pipe(p.gap, p.main))
		link("riser", at, at+1, p.pipe(p.rise, p.up))
		link("return riser", at+1, at+2, p.pipe(p.rise, p.back))
		link("balancing valve", at+2, at+3, Throttle{l.Risers[r].Valve})
		link("return main", at+3, back, p.pipe(p.gap, tubes[p.risers-r]))
		foot, back = at, at+3
	}
	return n
}

// read takes the flows off the network and follows the temperatures along.
func (p loopPlan) read(l *LoopWater, c float64) {
	flow := l.Solution.Flow
	l.Flow = flow[0]
	cool := func(temp unit.Temperature, length unit.Length, loss float64, q unit.Flow) unit.Temperature {
		heat := unit.Power(float64(length) * loss)
		l.Heat += heat
		if q <= 0 {
			return temp
		}
		return Along(temp, c, Section{heat, q})[0]
	}
	temp := l.Supply
	for r := range l.Risers {
		riser := &l.Risers[r]
		k := 2 + 5*r
		temp = cool(temp, p.gap, p.mainLoss, flow[k])
		riser.Flow, riser.Foot = flow[k+1], temp
		riser.Top = cool(temp, p.rise, p.upLoss, riser.Flow)
		riser.Back = cool(riser.Top, p.rise, p.backLoss, riser.Flow)
	}
	var back Stream
	tubes := p.mainTubes()
	for r := len(l.Risers) - 1; r >= 0; r-- {
		back = Stream{back.Flow + l.Risers[r].Flow, Together(back, Stream{l.Risers[r].Flow, l.Risers[r].Back})}
		loss := p.backLoss
		if tubes[p.risers-r] != p.back {
			loss *= pipeHeat(tubes[p.risers-r]) / pipeHeat(p.back)
		}
		back.Temp = cool(back.Temp, p.gap, loss, back.Flow)
	}
	l.Return = back.Temp
	if math.IsNaN(float64(l.Return)) {
		l.Return = l.Supply
	}
}
