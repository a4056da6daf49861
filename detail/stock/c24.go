package stock

import "standclear/detail/unit"

// C24 holds the characteristic values of strength class C24 as EN 338:2016 gives them (from memory,
// confirm): fifth percentiles, except E and Density, which are means.
type C24 struct {
	Fm, Ft, Fv, FcPerp unit.Pressure
	E, E05             unit.Pressure
	Density, Density05 float64 // kg/m3 at 12 % moisture
	Source             string
}

// CharacteristicC24 returns the class as tabulated. It is printed beside the design values of
// Lumber, which are not these.
func CharacteristicC24() C24 {
	return C24{
		Fm: 24 * unit.Megapascal, Ft: 14.5 * unit.Megapascal, Fv: 4 * unit.Megapascal, FcPerp: 2.5 * unit.Megapascal,
		E: 11000 * unit.Megapascal, E05: 7400 * unit.Megapascal, Density: 420, Density05: 350,
		Source: "EN 338:2016, Table 1; " + memory,
	}
}

// c24 maps C24 to values for allowable stress design, so that a metric project is checked by the
// method of the inch ones. The mapping is a judgement and on the low side of both standards:
//
//   - Fb, CF, Ft, Fv, E and Emin are those of spruce-pine-fir No.2. For bending, 24 MPa over the 2.1
//     that turns a fifth percentile into a ten-year allowable value is 11.4 MPa (1660 psi) against
//     875 x 1.1 = 963 psi; for shear 4.0 x 0.67 (cracks) / 2.1 is 1.28 MPa (185 psi) against 135.
//   - FcPerp is 2.5 MPa over 1.67, the factor of ASTM D245 for bearing: 1.50 MPa (217 psi), below the
//     425 psi of spruce-pine-fir.
//   - G is 0.39: a mean of 420 kg/m3 at 12 % moisture is 0.375 on the volume at 12 %, 0.354 on the
//     green volume and 0.39 oven-dry (Wood Handbook, shrinkage taken as 0.265 G).
func c24(class int) LumberValues {
	v, _ := Lumber("spruce-pine-fir", "No.2", [...]unit.Length{5.5, 7.25, 9.25, 11.25}[class]*unit.Inch)
	v.Species, v.Grade = "european softwood", "C24"
	v.FcPerp = CharacteristicC24().FcPerp / 1.67
	v.G = 0.39
	v.Source = "EN 338:2016 C24 mapped low: NDS values of spruce-pine-fir No.2, FcPerp 2.5 MPa / 1.67, G 0.39; " +
		judged + " on values " + memory
	return v
}
