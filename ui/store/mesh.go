package store

import (
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/stl"
)

// OpenMesh adds a part from an STL file that the person chooses. Its numbers are taken for metres.
func (s *Store) OpenMesh() {
	s.desk.Pick(".stl", func(name, text string, err error) {
		var m *plan.Mesh
		if err == nil {
			m, err = stl.Read([]byte(text))
		}
		if err != nil {
			s.Say("file", "The file "+name+" could not be used: "+err.Error())
			return
		}
		if s.Do(func(p *plan.Plan) {
			b := plan.BlankSolid()
			b.Shape, b.Mesh, b.Mass, b.At, b.Turn = plan.MeshBody, m, math.NaN(), vec.V3{}, vec.V3{}
			p.Payload.Solids = append(p.Payload.Solids, b)
		}) {
			s.Show("payload")
			s.desk.Focus("payload-" + strconv.Itoa(len(s.plan.Payload.Solids)-1) + "-mass")
		}
	})
}
