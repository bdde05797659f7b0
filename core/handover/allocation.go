package handover

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"cohoist/core/vec"
)

// Matrix is a matrix with names for its rows and columns.
type Matrix struct {
	About   string // the point and axes it stands for, in words
	Rows    []string
	Columns []string
	Data    []float64 // by rows
}

// wrench names the six rows of the balance.
var wrench = []string{"force_x_n", "force_y_n", "force_z_n", "moment_x_n_m", "moment_y_n_m", "moment_z_n_m"}

// Allocation is the matrix B of the balance B u = w, (5.3). w is the wrench that the team gives the body: force x, y, z in N, then
// moment x, y, z in N m about the combined centre of mass (with cables only, the payload's own), body axes: payload
// x, y, z, leaning with the body. u are newtons: for a rigid hold a column a rotor, its thrust (5.1); for a cable three, the force
// on the payload along x, y, z (5.2). Columns follow the team. The order of rotors is that of THEORY (4.1).
func (l Lift) Allocation() Matrix {
	m := l.Model
	c := m.Body.COM
	b := Matrix{About: fmt.Sprintf("about (%s %s %s) m in the payload frame; body axes", number(c[0]), number(c[1]), number(c[2])), Rows: wrench}
	var force, moment []vec.V3
	for _, craft := range m.Craft {
		arm := craft.At.Sub(c)
		if craft.Rigid {
			for j, r := range craft.Rotors {
				b.Columns = append(b.Columns, fmt.Sprintf("%s rotor %d", craft.ID, j+1))
				force, moment = append(force, r.Force), append(moment, arm.Cross(r.Force).Add(r.Moment)) // (5.1), (22.2)
			}
			continue
		}
		for j, axis := range vec.Identity {
			b.Columns = append(b.Columns, fmt.Sprintf("%s cable %c", craft.ID, 'x'+rune(j)))
			pull := axis.Scale(craft.Keep())
			force, moment = append(force, pull), append(moment, craft.Arm().Sub(c).Cross(pull)) // (5.2), (22.3)
		}
	}
	for _, part := range [][]vec.V3{force, moment} {
		for axis := range 3 {
			for _, v := range part {
				b.Data = append(b.Data, clean(v[axis]))
			}
		}
	}
	return b
}

// clean takes away what sines and cosines leave of 0.
func clean(x float64) float64 {
	if math.Abs(x) < 1e-14 {
		return 0
	}
	return x
}

// Wanted is the wrench w that the team has to give, (5.3), in the order of the rows of Allocation.
func (l Lift) Wanted() []float64 {
	f, m := l.Model.Need, l.Model.NeedTurn
	return []float64{f[0], f[1], f[2], m[0], m[1], m[2]}
}

// Inverse is the Moore–Penrose pseudo-inverse B⁺ and the rank of B. Of all u with B u = w, B⁺ w is the shortest; when no u
// does it, B⁺ w comes nearest. Singular values below the size of B times 2.2e-16 of the largest count as 0.
func (b Matrix) Inverse() (Matrix, int) {
	rows, columns := len(b.Rows), len(b.Columns)
	out := Matrix{About: b.About, Rows: b.Columns, Columns: b.Rows, Data: make([]float64, rows*columns)}
	var d mat.SVD
	if !d.Factorize(mat.NewDense(rows, columns, append([]float64(nil), b.Data...)), mat.SVDThin) {
		for i := range out.Data {
			out.Data[i] = math.NaN()
		}
		return out, 0
	}
	var u, v mat.Dense
	d.UTo(&u)
	d.VTo(&v)
	values := d.Values(nil)
	least := float64(max(rows, columns)) * 0x1p-52 * values[0]
	rank := 0
	for k, s := range values {
		if s <= least {
			continue
		}
		rank++
		for i := range columns {
			for j := range rows {
				out.Data[i*rows+j] += v.At(i, k) * u.At(j, k) / s
			}
		}
	}
	for i, x := range out.Data {
		out.Data[i] = clean(x)
	}
	return out, rank
}

// CSV is the matrix as a table; its first cell says about which point and in which axes.
func (b Matrix) CSV() []byte {
	keys := []string{b.About}
	for _, c := range b.Columns {
		keys = append(keys, text(c))
	}
	t := head(keys...)
	n := len(b.Columns)
	for i, r := range b.Rows {
		cells := []string{text(r)}
		t.row(append(cells, numbers(b.Data[i*n:(i+1)*n]...)...)...)
	}
	return t.bytes()
}
