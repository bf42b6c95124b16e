package solver

// Constants are the figures of water and of units that formulas may name.
// Exact factors are those of NIST SP 811 (2008), App. B.9; which roundings
// are taught is common practice, no source.
var Constants = []Constant{
	{
		Name: "gamma", Says: "pressure of standing water, for its height",
		US: Taught{"psi/ft", []string{"0.433", "0.4333", "0.4335", "0.434", "0.4329004329"}, []string{"0.43", "0.5"}},
		SI: Taught{"kPa/m", []string{"9.81", "9.8", "9.807", "9.80665"}, []string{"10"}},
	},
	{
		Name: "water_heat", Says: "heat of water, for its volume and its rise",
		US: Taught{"Btu/(gal·°F)", []string{"8.33", "8.34", "8.345", "8.337"}, []string{"8.3"}},
		SI: Taught{"kJ/(L·K)", []string{"4.19", "4.18", "4.184", "4.186", "4.187", "4.2"}, []string{"4"}},
	},
	{
		Name: "flow_heat", Says: "heat carried by a flow of one per degree",
		US: Taught{"Btu/(h·gpm·°F)", []string{"500", "499.8", "500.4", "490"}, nil},
		SI: Taught{"kJ/(L·K)", []string{"4.19", "4.18", "4.184", "4.186", "4.187", "4.2"}, []string{"4"}},
	},
	{
		Name: "kpa_per_psi", Says: "kilopascals in one psi",
		US: Taught{"kPa/psi", []string{"6.895", "6.89", "6.9", "6.894757"}, []string{"7"}},
		SI: Taught{"kPa/psi", []string{"6.895", "6.89", "6.9", "6.894757"}, []string{"7"}},
	},
	{
		Name: "metre_per_foot", Says: "metres in one foot",
		US: Taught{"m/ft", []string{"0.3048", "0.305"}, []string{"0.3"}},
		SI: Taught{"m/ft", []string{"0.3048", "0.305"}, []string{"0.3"}},
	},
	{
		Name: "litre_per_gallon", Says: "litres in one US gallon",
		US: Taught{"L/US gal", []string{"3.785", "3.78", "3.79", "3.785412"}, []string{"4"}},
		SI: Taught{"L/US gal", []string{"3.785", "3.78", "3.79", "3.785412"}, []string{"4"}},
	},
	{
		Name: "litre_per_imperial", Says: "litres in one imperial gallon",
		US: Taught{"L/imp gal", []string{"4.546", "4.55", "4.54609"}, nil},
		SI: Taught{"L/imp gal", []string{"4.546", "4.55", "4.54609"}, nil},
	},
	{
		Name: "us_per_imperial", Says: "US gallons in one imperial gallon",
		US: Taught{"US gal/imp gal", []string{"1.2", "1.201", "1.20095"}, nil},
		SI: Taught{"US gal/imp gal", []string{"1.2", "1.201", "1.20095"}, nil},
	},
	{
		Name: "ls_per_gpm", Says: "litres per second in one US gallon per minute",
		US: Taught{"L/(s·gpm)", []string{"0.0631", "0.06309"}, nil},
		SI: Taught{"L/(s·gpm)", []string{"0.0631", "0.06309"}, nil},
	},
	{
		Name: "btu_per_kwh", Says: "Btu in one kilowatt hour",
		US: Taught{"Btu/kWh", []string{"3412", "3410", "3413", "3414"}, []string{"3400"}},
		SI: Taught{"Btu/kWh", []string{"3412", "3410", "3413", "3414"}, []string{"3400"}},
	},
	{
		Name: "watt_per_hp", Says: "watts in one horsepower",
		US: Taught{"W/hp", []string{"746", "745.7"}, []string{"750"}},
		SI: Taught{"W/hp", []string{"746", "745.7"}, []string{"750"}},
	},
	{
		Name: "pressure_factor", Says: "kilopascals in one psi", SaysSI: "psi in one kilopascal",
		US: Taught{"kPa/psi", []string{"6.895", "6.89", "6.9", "6.894757"}, []string{"7"}},
		SI: Taught{"psi/kPa", []string{"0.145", "0.1450", "0.14503", "0.14504", "0.1450377", "0.1449"}, nil},
	},
	{
		Name: "length_factor", Says: "metres in one foot", SaysSI: "feet in one metre",
		US: Taught{"m/ft", []string{"0.3048", "0.305"}, []string{"0.3"}},
		SI: Taught{"ft/m", []string{"3.281", "3.28", "3.2808", "3.28084"}, []string{"3.3"}},
	},
	{
		Name: "power_factor", Says: "kilowatts in one horsepower", SaysSI: "horsepower in one kilowatt",
		US: Taught{"kW/hp", []string{"0.746", "0.7457"}, []string{"0.75"}},
		SI: Taught{"hp/kW", []string{"1.341", "1.34", "1.3405", "1.34102"}, []string{"1.3"}},
	},
	{
		Name: "kpa_per_bar", Says: "kilopascals in one bar",
		US: Taught{"kPa/bar", []string{"100"}, nil},
		SI: Taught{"kPa/bar", []string{"100"}, nil},
	},
	{
		Name: "mm_per_metre", Says: "millimetres in one metre",
		US: Taught{"mm/m", []string{"1000"}, nil},
		SI: Taught{"mm/m", []string{"1000"}, nil},
	},
	{
		Name: "f_per_c", Says: "degrees Fahrenheit in one degree Celsius, as a difference",
		US: Taught{"°F/°C", []string{"1.8"}, nil},
		SI: Taught{"°F/°C", []string{"1.8"}, nil},
	},
	{
		Name: "btu_per_mbh", Says: "Btu an hour in one MBH; the M is the Roman thousand",
		US: Taught{"Btu/(h·MBH)", []string{"1000"}, nil},
		SI: Taught{"Btu/(h·MBH)", []string{"1000"}, nil},
	},
	{
		Name: "mbh_per_kw", Says: "MBH in one kilowatt",
		US: Taught{"MBH/kW", []string{"3.412", "3.41", "3.413", "3.414"}, []string{"3.4"}},
		SI: Taught{"MBH/kW", []string{"3.412", "3.41", "3.413", "3.414"}, []string{"3.4"}},
	},
	{
		Name: "head_per_vacuum", Says: "height of water that a vacuum lifts, for its depth",
		US: Taught{"ft/inHg", []string{"1.13", "1.133"}, nil},
		SI: Taught{"m/kPa", []string{"0.102", "0.10197"}, []string{"0.1"}},
	},
	{
		Name: "seconds_per_minute", Says: "seconds in a minute",
		US: Taught{"s/min", []string{"60"}, nil},
		SI: Taught{"s/min", []string{"60"}, nil},
	},
	{
		Name: "minutes_per_hour", Says: "minutes in an hour",
		US: Taught{"min/h", []string{"60"}, nil},
		SI: Taught{"min/h", []string{"60"}, nil},
	},
	{
		Name: "inches_per_foot", Says: "inches in a foot",
		US: Taught{"in/ft", []string{"12"}, nil},
		SI: Taught{"in/ft", []string{"12"}, nil},
	},
	{
		Name: "seconds_per_hour", Says: "seconds in an hour",
		US: Taught{"s/h", []string{"3600"}, nil},
		SI: Taught{"s/h", []string{"3600"}, nil},
	},
	{
		Name: "watt_per_kw", Says: "watts in one kilowatt",
		US: Taught{"W/kW", []string{"1000"}, nil},
		SI: Taught{"W/kW", []string{"1000"}, nil},
	},
	{
		Name: "velocity_factor", Says: "speed from flow over the square of the bore, 4/pi in these units",
		US: Taught{"ft·in²/(s·gpm)", []string{"0.408", "0.4085", "0.409"}, []string{"0.41"}},
		SI: Taught{"m·mm²/L", []string{"1273", "1273.2", "1274"}, []string{"1270"}},
	},
	{
		Name: "hundred", Says: "feet in the 100 ft that friction is told for",
		US: Taught{"ft/100 ft", []string{"100"}, nil},
		SI: Taught{"ft/100 ft", []string{"100"}, nil},
	},
	{
		Name: "hazen", Says: "figure of the Hazen-Williams formula, for psi in 100 ft", SaysSI: "figure of the Hazen-Williams formula, for head over length",
		US: Taught{"psi/100 ft", []string{"452", "453"}, nil},
		SI: Taught{"m/m", []string{"10.67", "10.7"}, nil},
	},
	{
		Name: "flow_base", Says: "flow that the Hazen-Williams formula counts in, one gallon a minute", SaysSI: "flow that the Hazen-Williams formula counts in, one cubic metre a second",
		US: Taught{"gpm", []string{"1"}, nil},
		SI: Taught{"L/s", []string{"1000"}, nil},
	},
	{
		Name: "bore_base", Says: "diameter that the Hazen-Williams formula counts in, one inch", SaysSI: "diameter that the Hazen-Williams formula counts in, one metre",
		US: Taught{"in", []string{"1"}, nil},
		SI: Taught{"mm", []string{"1000"}, nil},
	},
	{
		Name: "water_weight", Says: "weight of water, for its volume",
		US: Taught{"lb/US gal", []string{"8.34", "8.33", "8.345", "8.337"}, []string{"8.3"}},
		SI: Taught{"kg/L", []string{"1"}, nil},
	},
	{
		Name: "million", Says: "parts in a million",
		US: Taught{"ppm", []string{"1000000"}, nil},
		SI: Taught{"ppm", []string{"1000000"}, nil},
	},
	{
		Name: "mg_per_gram", Says: "milligrams in one gram",
		US: Taught{"mg/g", []string{"1000"}, nil},
		SI: Taught{"mg/g", []string{"1000"}, nil},
	},
	{
		Name: "square_mm", Says: "square millimetres in one square metre",
		US: Taught{"mm²/m²", []string{"1000000"}, nil},
		SI: Taught{"mm²/m²", []string{"1000000"}, nil},
	},
	{
		Name: "ma_per_amp", Says: "milliamperes in one ampere",
		US: Taught{"mA/A", []string{"1000"}, nil},
		SI: Taught{"mA/A", []string{"1000"}, nil},
	},
	{
		Name: "hours_per_year", Says: "hours in a year",
		US: Taught{"h/year", []string{"8760"}, nil},
		SI: Taught{"h/year", []string{"8760"}, nil},
	},
	{
		Name: "power_base", Says: "flow times height that one horsepower lifts", SaysSI: "flow times height that one kilowatt lifts",
		US: Taught{"gpm·ft/hp", []string{"3960", "3958", "3956"}, []string{"4000"}},
		SI: Taught{"L·m/(s·kW)", []string{"102", "101.97", "101.9"}, []string{"100"}},
	},
	{
		Name: "pressure_base", Says: "flow times pressure that one horsepower makes", SaysSI: "flow times pressure that one kilowatt makes",
		US: Taught{"gpm·psi/hp", []string{"1714", "1714.3", "1714.29", "1715"}, []string{"1700"}},
		SI: Taught{"kPa·L/(s·kW)", []string{"1000"}, nil},
	},
	{
		Name: "tank_factor", Says: "gallons in a cubic foot", SaysSI: "litres in a cubic metre",
		US: Taught{"US gal/ft³", []string{"7.48", "7.481", "7.4805"}, []string{"7.5"}},
		SI: Taught{"L/m³", []string{"1000"}, nil},
	},
	{
		Name: "content_factor", Says: "content of a pipe of one inch", SaysSI: "content of a pipe of one metre",
		US: Taught{"US gal/ft", []string{"0.0408"}, []string{"0.041"}},
		SI: Taught{"L/m", []string{"785.4", "785"}, nil},
	},
	{
		Name: "valve_flow", Says: "flow that Cv counts in, one gallon a minute", SaysSI: "flow that Kv counts in, one cubic metre an hour",
		US: Taught{"gpm", []string{"1"}, nil},
		SI: Taught{"L/s", []string{"0.27778", "0.2778", "0.278"}, nil},
	},
	{
		Name: "valve_press", Says: "pressure that Cv counts in, one psi", SaysSI: "pressure that Kv counts in, one bar",
		US: Taught{"psi", []string{"1"}, nil},
		SI: Taught{"kPa", []string{"100"}, nil},
	},
	{
		Name: "fuel_base", Says: "Btu in one therm", SaysSI: "joules in one gigajoule",
		US: Taught{"Btu/therm", []string{"100000"}, nil},
		SI: Taught{"J/GJ", []string{"1000000000"}, nil},
	},
}
