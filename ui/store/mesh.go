package store

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/mesh"
)

// OpenMesh adds a part from a mesh file that the person chooses. Its numbers are taken for metres.
func (s *Store) OpenMesh() {
	s.desk.Pick(".stl,.obj", func(name, text string, err error) { s.addMesh(name, text, err) })
}

func (s *Store) addMesh(name, text string, err error) {
	var m *plan.Mesh
	if err == nil {
		m, err = mesh.Read(name, []byte(text))
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
}

// Dropped takes a file that was dropped on the page: a mesh becomes a part, anything else is read as a plan.
func (s *Store) Dropped(name, text string, err error) {
	switch low := strings.ToLower(name); {
	case strings.HasSuffix(low, ".stl"), strings.HasSuffix(low, ".obj"):
		s.addMesh(name, text, err)
	default:
		s.opened(name, text, err)
	}
}
