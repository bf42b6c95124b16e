package unit

// An entry is a unit of the table with what people write for it. Names are
// separated by bars. A name with a slash or a dot stands for the whole unit;
// the others may be parts of a composed one. Bare names mean the US or the
// imperial unit as the reader of the text is told.
type entry struct {
	Unit
	also     string
	bare     string
	imperial bool
}

// Dimensions of the table.
var (
	dimArea     = Dim{2}
	dimVolume   = Dim{3}
	dimPressure = Dim{-1, 1, -2}
	dimFlow     = Dim{3, 0, -1}
	dimForce    = Dim{1, 1, -2}
	dimEnergy   = Dim{2, 1, -2}
	dimPower    = Dim{2, 1, -3}
	dimPerTime  = Dim{0, 0, -1}
	dimDensity  = Dim{-3, 1}
	dimPerPipe  = Dim{1, 1, -3}
)

// Exact factors, from the definitions: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg,
// 1 US gal = 231 in3, 1 imp gal = 4.54609 L, standard gravity 9.80665 m/s2,
// 1 Btu (IT) = 1055.05585262 J. Mercury is the conventional one of 13,595.1
// kg/m3, water the conventional one of 1,000 kg/m3 (NIST SP 811, 2008, App. B).
const (
	foot     = 0.3048
	inch     = foot / 12
	pound    = 0.45359237
	gravity  = 9.80665
	psi      = pound * gravity / (inch * inch)
	gallon   = 231 * inch * inch * inch
	impGal   = 4.54609e-3
	mercury  = 13595.1 * gravity // Pa per metre
	water    = 1000 * gravity    // Pa per metre
	btu      = 1055.05585262
	minute   = 60.0
	hour     = 3600.0
	day      = 24 * hour
	atm      = 101325.0
	kelvinC  = 273.15
	rankineF = 459.67
)

// table holds every unit the trade meets, one a line. A therm is 100,000 Btu;
// a year 8,760 hours, as running costs are worked; a ton 2,000 lb; a
// horsepower 550 ft·lbf/s. Feet of head are a height; feet of water a pressure. Degrees of an angle are plain numbers, because
// formulas take angles in degrees. F° and C° are differences of temperature.
var table = []entry{
	{Unit: Unit{Name: "psi", Factor: psi, Dim: dimPressure}, also: "PSI|lb/in2|lb/in²|lbf/in2|lbf/in²|lbs/in2|lb/sq in|pounds per square inch"},
	{Unit: Unit{Name: "psig", Factor: psi, Dim: dimPressure, Zero: Gauge}, also: "psi gauge|psi g"},
	{Unit: Unit{Name: "psia", Factor: psi, Dim: dimPressure, Zero: Absolute}, also: "psi abs|psi absolute|psi a"},
	{Unit: Unit{Name: "kPa", Factor: 1000, Dim: dimPressure}, also: "kilopascal|kilopascals"},
	{Unit: Unit{Name: "kPa abs", Factor: 1000, Dim: dimPressure, Zero: Absolute}, also: "kPa absolute|kPaa|kPa a|kPa(a)|kPa (abs)"},
	{Unit: Unit{Name: "kPa gauge", Factor: 1000, Dim: dimPressure, Zero: Gauge}, also: "kPag|kPa g|kPa(g)"},
	{Unit: Unit{Name: "bar", Factor: 1e5, Dim: dimPressure}, also: "bars"},
	{Unit: Unit{Name: "bar abs", Factor: 1e5, Dim: dimPressure, Zero: Absolute}, also: "bara|bar absolute"},
	{Unit: Unit{Name: "mbar", Factor: 100, Dim: dimPressure}, also: "millibar"},
	{Unit: Unit{Name: "Pa", Factor: 1, Dim: dimPressure}, also: "pascal|pascals"},
	{Unit: Unit{Name: "MPa", Factor: 1e6, Dim: dimPressure}, also: "megapascal"},
	{Unit: Unit{Name: "ft water", Factor: water * foot, Dim: dimPressure}, also: "ft of water|feet of water|foot of water|ft H2O|ftH2O"},
	{Unit: Unit{Name: "m water", Factor: water, Dim: dimPressure}, also: "m of water|metres of water|meters of water|m H2O|mH2O"},
	{Unit: Unit{Name: "in water", Factor: water * inch, Dim: dimPressure}, also: "in of water|in. of water|inches of water|in H2O|inH2O|in. water"},
	{Unit: Unit{Name: "inHg", Factor: mercury * inch, Dim: dimPressure}, also: "in Hg|in. Hg|in.Hg|inches of mercury|in of mercury|in. of mercury|inches Hg|in mercury"},
	{Unit: Unit{Name: "mmHg", Factor: mercury * 0.001, Dim: dimPressure}, also: "mm Hg|mm of mercury"},
	{Unit: Unit{Name: "atm", Factor: atm, Dim: dimPressure}, also: "atmosphere|atmospheres"},
	{Unit: Unit{Name: "psf", Factor: pound * gravity / (foot * foot), Dim: dimPressure}, also: "lb/ft2|lb/ft²|lbf/ft2|lbf/ft²|lb/sq ft|pounds per square foot"},

	{Unit: Unit{Name: "ft", Factor: foot, Dim: dimLength}, also: "ft.|foot|feet|ft of head|ft head|feet of head|'|′|’|`"},
	{Unit: Unit{Name: "in", Factor: inch, Dim: dimLength}, also: "in.|inch|inches|\"|″|”|“|''|’’|′′"},
	{Unit: Unit{Name: "m", Factor: 1, Dim: dimLength}, also: "metre|metres|meter|meters|m of head|m head|metres of head"},
	{Unit: Unit{Name: "mm", Factor: 0.001, Dim: dimLength}, also: "millimetre|millimetres|millimeter|millimeters"},
	{Unit: Unit{Name: "cm", Factor: 0.01, Dim: dimLength}, also: "centimetre|centimetres|centimeter|centimeters"},
	{Unit: Unit{Name: "km", Factor: 1000, Dim: dimLength}, also: "kilometre|kilometres|kilometer|kilometers"},
	{Unit: Unit{Name: "mile", Factor: 5280 * foot, Dim: dimLength}, also: "miles|mi"},
	{Unit: Unit{Name: "ft²", Factor: foot * foot, Dim: dimArea}, also: "sq ft|sq. ft|sqft|square foot|square feet"},
	{Unit: Unit{Name: "in²", Factor: inch * inch, Dim: dimArea}, also: "sq in|sq. in|sqin|square inch|square inches"},
	{Unit: Unit{Name: "m²", Factor: 1, Dim: dimArea}, also: "sq m|square metre|square metres|square meters"},
	{Unit: Unit{Name: "mm²", Factor: 1e-6, Dim: dimArea}, also: "sq mm|square millimetres"},

	{Unit: Unit{Name: "US gal", Factor: gallon, Dim: dimVolume}, also: "USgal|US gallon|US gallons|gal (US)|gal US|USG", bare: "gal|gal.|gals|gallon|gallons"},
	{Unit: Unit{Name: "imp gal", Factor: impGal, Dim: dimVolume}, also: "impgal|imp. gal|imperial gal|imperial gallon|imperial gallons|imp gallon|imp gallons|gal (imp)|gal imp|UK gal", bare: "gal|gal.|gals|gallon|gallons", imperial: true},
	{Unit: Unit{Name: "L", Factor: 1e-3, Dim: dimVolume}, also: "l|litre|litres|liter|liters|ltr"},
	{Unit: Unit{Name: "mL", Factor: 1e-6, Dim: dimVolume}, also: "ml|millilitre|millilitres|milliliters"},
	{Unit: Unit{Name: "m³", Factor: 1, Dim: dimVolume}, also: "cu m|cubic metre|cubic metres|cubic meter|cubic meters"},
	{Unit: Unit{Name: "ft³", Factor: foot * foot * foot, Dim: dimVolume}, also: "cu ft|cu. ft|cuft|cf|cubic foot|cubic feet"},
	{Unit: Unit{Name: "in³", Factor: inch * inch * inch, Dim: dimVolume}, also: "cu in|cu. in|cubic inch|cubic inches"},

	{Unit: Unit{Name: "gpm", Factor: gallon / minute, Dim: dimFlow}, also: "US gpm|USgpm|US gal/min|USGPM", bare: "GPM|gal/min|gallons per minute"},
	{Unit: Unit{Name: "imp gpm", Factor: impGal / minute, Dim: dimFlow}, also: "impgpm|imperial gpm|imp gal/min|igpm", bare: "gpm|gal/min|gallons per minute", imperial: true},
	{Unit: Unit{Name: "gph", Factor: gallon / hour, Dim: dimFlow}, also: "US gph|USgph|US gal/h", bare: "GPH|gal/h|gal/hr|gallons per hour"},
	{Unit: Unit{Name: "imp gph", Factor: impGal / hour, Dim: dimFlow}, also: "impgph|imperial gph|imp gal/h|igph", bare: "gph|gal/h|gal/hr|gallons per hour", imperial: true},
	{Unit: Unit{Name: "L/s", Factor: 1e-3, Dim: dimFlow}, also: "lps|LPS"},
	{Unit: Unit{Name: "L/min", Factor: 1e-3 / minute, Dim: dimFlow}, also: "lpm|LPM"},
	{Unit: Unit{Name: "L/h", Factor: 1e-3 / hour, Dim: dimFlow}, also: "lph|LPH"},
	{Unit: Unit{Name: "m³/h", Factor: 1 / hour, Dim: dimFlow}, also: "cmh|CMH"},
	{Unit: Unit{Name: "ft³/s", Factor: foot * foot * foot, Dim: dimFlow}, also: "cfs|CFS"},
	{Unit: Unit{Name: "ft/s", Factor: foot, Dim: Dim{1, 0, -1}}, also: "fps|FPS"},

	{Unit: Unit{Name: "s", Factor: 1, Dim: dimTime}, also: "sec|sec.|secs|second|seconds"},
	{Unit: Unit{Name: "min", Factor: minute, Dim: dimTime}, also: "min.|mins|minute|minutes"},
	{Unit: Unit{Name: "h", Factor: hour, Dim: dimTime}, also: "hr|hr.|hrs|hour|hours"},
	{Unit: Unit{Name: "day", Factor: day, Dim: dimTime}, also: "days|d"},
	{Unit: Unit{Name: "year", Factor: 365 * day, Dim: dimTime}, also: "years|yr|yrs"},
	{Unit: Unit{Name: "rpm", Factor: 1 / minute, Dim: dimPerTime}, also: "rev/min|r/min|revolutions per minute"},
	{Unit: Unit{Name: "starts/h", Factor: 1 / hour, Dim: dimPerTime}, also: "starts/hr|starts per hour|starts an hour|per hour|1/h"},

	{Unit: Unit{Name: "lb", Factor: pound, Dim: dimMass}, also: "lb.|lbs|pound|pounds|lbm"},
	{Unit: Unit{Name: "kg", Factor: 1, Dim: dimMass}, also: "kilogram|kilograms|kgs"},
	{Unit: Unit{Name: "g", Factor: 0.001, Dim: dimMass}, also: "gram|grams"},
	{Unit: Unit{Name: "mg", Factor: 1e-6, Dim: dimMass}, also: "milligram|milligrams"},
	{Unit: Unit{Name: "oz", Factor: pound / 16, Dim: dimMass}, also: "ounce|ounces"},
	{Unit: Unit{Name: "ton", Factor: 2000 * pound, Dim: dimMass}, also: "tons|short ton|short tons"},
	{Unit: Unit{Name: "tonne", Factor: 1000, Dim: dimMass}, also: "tonnes|metric ton|metric tons"},
	{Unit: Unit{Name: "mg/L", Factor: 1e-3, Dim: dimDensity}, also: "mg/l"},
	{Unit: Unit{Name: "lbf", Factor: pound * gravity, Dim: dimForce}, also: "pound-force|pounds-force|pounds of force|lb force|lbs force"},
	{Unit: Unit{Name: "N", Factor: 1, Dim: dimForce}, also: "newton|newtons"},
	{Unit: Unit{Name: "kN", Factor: 1000, Dim: dimForce}, also: "kilonewton|kilonewtons"},

	{Unit: Unit{Name: "°F", Factor: 5.0 / 9, Offset: rankineF * 5 / 9, Dim: dimTemp, Zero: Scale}, also: "ºF|° F|º F|℉|F|f|deg F|deg. F|degF|degrees F|degree F|degrees Fahrenheit|Fahrenheit"},
	{Unit: Unit{Name: "°C", Factor: 1, Offset: kelvinC, Dim: dimTemp, Zero: Scale}, also: "ºC|° C|º C|℃|C|c|deg C|deg. C|degC|degrees C|degree C|degrees Celsius|Celsius"},
	{Unit: Unit{Name: "K", Factor: 1, Dim: dimTemp, Zero: Scale}, also: "kelvin|kelvins"},
	{Unit: Unit{Name: "F°", Factor: 5.0 / 9, Dim: dimTemp}, also: "Fº|°F rise|°F drop|°F difference|F degrees"},
	{Unit: Unit{Name: "C°", Factor: 1, Dim: dimTemp}, also: "Cº|°C rise|°C drop|°C difference|C degrees|K rise|K drop|K difference"},

	{Unit: Unit{Name: "Btu", Factor: btu, Dim: dimEnergy}, also: "BTU|BTUs|Btus|BThU"},
	{Unit: Unit{Name: "J", Factor: 1, Dim: dimEnergy}, also: "joule|joules"},
	{Unit: Unit{Name: "kJ", Factor: 1e3, Dim: dimEnergy}, also: "kilojoule|kilojoules"},
	{Unit: Unit{Name: "MJ", Factor: 1e6, Dim: dimEnergy}, also: "megajoule|megajoules"},
	{Unit: Unit{Name: "GJ", Factor: 1e9, Dim: dimEnergy}, also: "gigajoule|gigajoules"},
	{Unit: Unit{Name: "Wh", Factor: hour, Dim: dimEnergy}, also: "W·h|W-h|watt-hour|watt-hours|watt hours"},
	{Unit: Unit{Name: "kWh", Factor: 1000 * hour, Dim: dimEnergy}, also: "kW·h|kW-h|kW h|kWhr|kilowatt-hour|kilowatt-hours|kilowatt hours"},
	{Unit: Unit{Name: "therm", Factor: 1e5 * btu, Dim: dimEnergy}, also: "therms"},
	{Unit: Unit{Name: "Btu/h", Factor: btu / hour, Dim: dimPower}, also: "Btuh|BTUH"},
	{Unit: Unit{Name: "MBH", Factor: 1000 * btu / hour, Dim: dimPower}, also: "MBtuh"},
	{Unit: Unit{Name: "kW", Factor: 1000, Dim: dimPower}, also: "kilowatt|kilowatts"},
	{Unit: Unit{Name: "W", Factor: 1, Dim: dimPower}, also: "w|watt|watts"},
	{Unit: Unit{Name: "hp", Factor: 550 * foot * pound * gravity, Dim: dimPower}, also: "HP|horsepower"},
	{Unit: Unit{Name: "Btu/(h·ft)", Factor: btu / (hour * foot), Dim: dimPerPipe}, also: "Btu/h ft|Btu/hr ft|Btu/h-ft|Btu/hr-ft|Btuh per foot|Btuh ft"},

	{Unit: Unit{Name: "A", Factor: 1, Dim: dimCurrent}, also: "amp|amps|ampere|amperes"},
	{Unit: Unit{Name: "mA", Factor: 0.001, Dim: dimCurrent}, also: "milliamp|milliamps"},
	{Unit: Unit{Name: "mV", Factor: 0.001, Dim: Dim{2, 1, -3, 0, -1}}, also: "millivolt|millivolts"},
	{Unit: Unit{Name: "A·h", Factor: hour, Dim: Dim{0, 0, 1, 0, 1}}, also: "Ah|A-h|A h|amp-hour|amp-hours|amp hours|ampere-hours"},
	{Unit: Unit{Name: "$", Factor: 1, Dim: dimMoney}, also: "dollar|dollars"},
	{Unit: Unit{Name: "¢", Factor: 0.01, Dim: dimMoney}, also: "cent|cents"},
	{Unit: Unit{Name: "wsfu", Factor: 1, Dim: dimFixture}, also: "WSFU|FU|fu|f.u.|fixture unit|fixture units"},

	{Unit: Unit{Name: "%", Factor: 0.01}, also: "percent|per cent|pct"},
	{Unit: Unit{Name: "ppm", Factor: 1e-6}, also: "parts per million"},
	{Unit: Unit{Name: "°", Factor: 1}, also: "º|deg|degree|degrees"},
}

// composed are the compositions in daily use, for choosing a unit from a list.
var composed = []string{
	"psi/ft", "psi/100 ft", "kPa/m", "Pa/m", "m/s",
	"W/m", "US gal/ft", "L/m", "lb/ft", "kg/m",
	"lb/US gal", "lb/imp gal", "lb/ft³", "kg/m³", "kg/L",
	"Btu/(lb·°F)", "kJ/(kg·K)", "kJ/(L·K)", "Btu/(US gal·°F)", "Btu/(imp gal·°F)",
	"$/kWh", "$/therm", "$/GJ", "A·h/kg", "m³/s", "ft²/s", "m²/s",
	"ft·US gal/(min·hp)", "psi·US gal/(min·hp)", "1/K", "1/°F",
}

// Units are the units of a dimension that the table holds, and the composed
// ones in daily use, in table order: to choose from.
func Units(d Dim) []Unit {
	var list []Unit
	for _, e := range table {
		if e.Dim == d {
			list = append(list, e.Unit)
		}
	}
	for _, name := range composed {
		if u, err := Parse(name); err == nil && u.Dim == d {
			list = append(list, u)
		}
	}
	return list
}

// SIUnit is the coherent SI unit of a dimension: factor 1, "Pa" or
// "kg/(m·s)". A temperature is a difference.
func SIUnit(d Dim) Unit {
	switch d {
	case dimNumber:
		return Number
	case dimTemp:
		return Unit{Name: "K", Factor: 1, Dim: dimTemp}
	}
	for _, u := range Units(d) {
		if u.Factor == 1 && u.Zero == Plain {
			return u
		}
	}
	base := [...]string{"m", "kg", "s", "K", "A", "$", "wsfu"}
	var over, under []string
	for i, n := range d {
		switch {
		case n > 0:
			over = append(over, base[i]+powerSign(int(n)))
		case n < 0:
			under = append(under, base[i]+powerSign(-int(n)))
		}
	}
	return Unit{Name: joinName(over, under), Factor: 1, Dim: d}
}
