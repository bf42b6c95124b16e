package building

// Pressures of the street, as gauges read them: 60 % of draws are usual, the
// rest low and high areas when wild is set.
func (s *Sheet) streetPressure(wild bool) float64 {
	if wild {
		switch {
		case s.Chance(0.12):
			return s.PickPlate(streetLowUS, streetLowSI)
		case s.Chance(0.12):
			return s.PickPlate(streetHighUS, streetHighSI)
		}
	}
	return s.PickPlate(streetUS, streetSI)
}

// Street draws the street pressure, read at an elevation, and puts it into
// the building. It returns the static pressure in the unit of gauges.
func (s *Sheet) Street(gaugeAt float64, gaugeName string) float64 {
	p := s.streetPressure(true)
	s.SetStreet(p, p-s.PickPlate(swingUS, swingSI), gaugeAt, gaugeName)
	return p
}

// SetStreet puts street pressures (in the unit of gauges) into the building.
func (s *Sheet) SetStreet(static, low, gaugeAt float64, gaugeName string) {
	st := &s.Building.Street
	st.Static, st.Low = s.PlatePress(static), s.PlatePress(low)
	st.GaugeAt, st.GaugeName = s.Length(gaugeAt), gaugeName
}

// MainDepth draws how deep the street main lies, and puts it in the building.
func (s *Sheet) MainDepth() float64 {
	d := s.Pick(mainUS, mainSI)
	s.Building.Street.MainDepth = s.Length(d)
	return d
}

// Meter draws the loss of the water meter at design flow, in the unit of code
// pressures, and puts it into the building; so do Backflow and Strainer.
func (s *Sheet) Meter() float64 {
	v := s.Pick(meterUS, meterSI)
	s.Building.Losses.Meter = s.Press(v)
	return v
}

// Backflow draws the loss of the backflow preventer: a double check where the
// hazard is moderate, else a reduced pressure assembly.
func (s *Sheet) Backflow(moderate bool) float64 {
	v := s.Pick(reducedUS, reducedSI)
	if moderate {
		v = s.Pick(doubleUS, doubleSI)
	}
	s.Building.Losses.Backflow = s.Press(v)
	return v
}

// Strainer draws the loss of a clean strainer at design flow.
func (s *Sheet) Strainer() float64 {
	v := s.Pick(strainerUS, strainerSI)
	s.Building.Losses.Strainer = s.Press(v)
	return v
}

// Least is the pressure to keep at the top, in the unit of code pressures: the
// house's own where it sets one, else the profile's.
func (s *Sheet) Least() float64 {
	if s.TopMin > 0 {
		return s.TopMin
	}
	return s.Profile.TopMin.Value(s.System).Value
}

// Most is the static limit at a fixture, in the unit of code pressures.
func (s *Sheet) Most() float64 { return s.Profile.StaticMax.Value(s.System).Value }

// Shower and Closet are outlet heights in the unit of heights.
func (s *Sheet) Shower() float64 { return s.Heights(s.Building.HighOutlet) }

// Closet is the height of the lowest outlet above its floor.
func (s *Sheet) Closet() float64 { return s.Heights(s.Building.LowOutlet) }
