package answer

import (
	"bytes"
	"strings"
	"testing"
)

func TestAWrongCallNamesTheKeyWhatItGotAndWhatItTakes(t *testing.T) {
	for _, c := range []struct{ call, key, says string }{
		{"weather", "weather", "no topic"},
		{"movment|wood=red-oak", "movment", "near: movement"},
		{"width=20 in", "width", "no topic is named"},
		{"emc|temp=70F", "rh", "is missing"},
		{"emc|rh=45%", "temp", "is missing"},
		{"emc|temp=70F|rh=45", "rh", "unit is missing"},
		{"emc|temp=70|rh=45%", "temp", "unit is missing"},
		{"emc|temp=70F|rh=45%|hr=3%", "hr", "near: rh"},
		{"emc|temp=70F|rh=145%", "rh", "at most 100 %"},
		{"emc|temp=70F|rh=-5%", "rh", "of at least 0 %"},
		{"emc|temp=20F|rh=45%", "temp", "of at least"},
		{"emc|temp=300F|rh=45%", "temp", "at most"},
		{"emc|temp=45%|rh=45%", "temp", "unit of a percentage"},
		{"emc|temp=70F|rh=45%|rh=50%", "rh", "given twice"},
		{"emc|temp=70F|rh", "rh", "is not key=value"},
		{"emc|temp=70F|rh=", "rh", "nothing behind"},
		{"movement|wood=whit-oak|width=20 in|from_mc=8%|to_mc=10%", "wood", "white-oak"},
		{"movement|width=20 in|from_mc=8%|to_mc=10%", "wood", "is missing"},
		{"movement|wood=red-oak|width=20|from_mc=8%|to_mc=10%", "width", "unit is missing"},
		{"movement|wood=red-oak|width=0 in|from_mc=8%|to_mc=10%", "width", "above 0 mm"},
		{"movement|wood=red-oak|width=-3 in|from_mc=8%|to_mc=10%", "width", "above 0 mm"},
		{"movement|wood=red-oak|width=20 kg|from_mc=8%|to_mc=10%", "width", "unit of a mass"},
		{"movement|wood=red-oak|width=20 in|from_mc=8%", "to_mc", "is missing beside from_mc"},
		{"movement|wood=red-oak|width=20 in", "from_mc", "either from_mc and to_mc, or from_rh, to_rh and temp"},
		{"movement|wood=red-oak|width=20 in|from_rh=30%|to_rh=60%", "temp", "is missing"},
		{"movement|wood=red-oak|width=20 in|from_mc=8%|to_mc=10%|from_rh=30%|to_rh=60%|temp=70F", "from_rh", "beside from_mc"},
		{"movement|wood=red-oak|width=20 in|from_mc=8%|to_mc=10%|cut=rift", "cut", "flat, quarter, mixed"},
		{"slot|wood=white-oak|spacing=14 in|low_rh=60%|high_rh=30%|temp=70F|build_mc=8%|shank=0.19 in", "high_rh", "below low_rh"},
		{"slot|wood=white-oak|spacing=14 in|low_rh=30%|high_rh=60%|temp=70F|build_mc=8%", "shank", "is missing"},
		{"notch|wood=white-oak|distance=7 in|low_rh=30%|high_rh=60%|temp=70F|build_mc=8%|gap=1/16 in|post=1.458 in", "band", "is missing"},
		{"cup|wood=white-oak|width=6 in", "from_mc", "at least one of"},
		{"cup|wood=white-oak|width=6 in|face_difference=1%", "thickness", "is missing beside face_difference"},
		{"cup|wood=white-oak|width=6 in|from_mc=20%|to_mc=8%", "from_mc", "from 6 to 14 %"},
		{"cup|wood=white-oak|width=6 in|from_mc=8%|to_mc=4%", "to_mc", "from 6 to 14 %"},
		{"cup|wood=white-oak|width=6 in|from_rh=40%|to_rh=95%|temp=70F", "to_rh", "from 6 to 14 %"},
		{"cup|wood=white-oak|width=6 in|thickness=1 in|face_difference=9%", "face_difference", "at most 8"},
		{"board-feet|thickness=8|width=7 in|length=8 ft", "thickness", "8/4"},
		{"board-feet|thickness=8/4|width=7 in|length=8 ft|count=2.5", "count", "whole number"},
		{"board-feet|thickness=8/4|width=7 in|length=8 ft|tally=export", "tally", "retail, nhla, volume"},
		{"waste|net=20 bf", "waste", "either waste, or added"},
		{"waste|net=20 bf|waste=10%|added=20%", "added", "beside waste"},
		{"waste|net=20 bf|waste=100%", "waste", "at most 99 %"},
		{"waste|net=20 bf|waste=0.2", "waste", "unit is missing"},
		{"waste|net=20 psi|waste=20%", "net", "unit of a pressure"},
		{"pieces|stock=96 in|part=21 in|kerf=1/8 in|start=100 in", "start", "within the stock"},
		{"pieces|stock=96 in|part=21 in", "kerf", "is missing"},
		{"weight|wood=iron|length=1 m|width=1 m|thickness=20 mm", "wood", "unknown species"},
		{"pipe-weight|pipe=3/5|length=1 m", "pipe", "near"},
		{"pipe-weight|pipe=DN21|length=1 m", "pipe", "DN20"},
		{"pipe-cut|pipe=3/4|between=14 in|end_a=tee", "end_b", "is missing"},
		{"pipe-cut|pipe=3/4|between=14 in|end_a=te|end_b=tee", "end_a", "takes one of elbow90"},
		{"pipe-cut|pipe=3/4|between=1 in|end_a=tee|end_b=tee", "between", "no pipe fits"},
		{"pipe-beam|pipe=1|span=48 in|safety=0.5", "safety", "at least 1"},
		{"pipe-beam|pipe=1|span=48 in|yield=30000", "yield", "unit is missing"},
		{"pipe-beam|pipe=1|span=48 in|ends=loose", "ends", "resting, held"},
		{"thread|pipe=3/4|turns=-1", "turns", "at least 0"},
		{"loops|pipes=3|joints=9|groups=1", "joints", "at most 4"},
		{"loops|pipes=3|joints=2|groups=5", "groups", "more groups than joints"},
		{"loops|pipes=three|joints=9|groups=1", "pipes", "a number is missing"},
		{"level|pipe=3/4|a=29 in|b=29 in|c=29 in", "d", "is missing"},
		{"bore|pipe=3/4|through=union", "through", "pipe, coupling, elbow90, tee, flange"},
		{"sag|span=36 in|width=11 in|thickness=3/4 in|load=60 lb", "wood", "either wood, or modulus"},
		{"sag|wood=red-oak|modulus=1 GPa|span=36 in|width=11 in|thickness=3/4 in|load=60 lb", "modulus", "beside wood"},
		{"sag|wood=red-oak|span=36 in|width=11 in|thickness=3/4 in|load=60 psi", "load", "unit of a pressure"},
		{"sag|wood=red-oak|span=36 in|width=11 in|thickness=3/4 in|load=60 lb|lasting=wet", "lasting", "dry, damp"},
		{"tip|weight=100 lb|centre_height=20 in|base_depth=12 in|caster_offset=6 in", "caster_offset", "half of base_depth"},
		{"threshold|centre_height=26 in|centre_behind=4 in|wheel=3 in", "step", "is missing beside wheel"},
		{"threshold|centre_height=26 in|centre_behind=4 in|wheel=3 in|step=2 in", "step", "below half the wheel"},
		{"casters|total=225 lb|count=5", "count", "at most 4"},
		{"casters|total=225 lb|count=2", "count", "at least 3"},
		{"casters|total=225 lb|count=4|ex=0.8", "ex", "at most 0.5"},
		{"screw|wood=red-oak|thread_in=1 in", "gauge", "either gauge, or diameter"},
		{"screw|wood=red-oak|gauge=99|thread_in=1 in", "gauge", "at most 20"},
		{"screw|wood=red-oak|gauge=10|thread_in=9 in", "thread_in", "from"},
		{"pilot|gauge=3|wood=red-oak", "gauge", "near"},
		{"drill|thickness=3 in|saw_depth=1 in", "saw_depth", "at least half"},
		{"clamps|length=36 in|thickness=3/4 in|pressure=450 psi", "clamp_force", "is missing"},
		{"clamps|length=36 in|thickness=3/4 in|pressure=450 psi|clamp_force=1350 lb|pad=2 in", "edge_strip", "is missing beside pad"},
		{"adhesive|length=36 in|thickness=3/4 in|joints=3|spread=200 m2/L", "spread", "unit of a coverage"},
		{"resin|area=3 in|depth=1 in", "area", "unit of a length"},
		{"resin|area=3 sqin|depth=1 in|ratio=2:0", "ratio", "above nought"},
		{"resin|area=3 sqin|depth=1 in|spare=10", "spare", "at most 2"},
		{"resin|area=3 sqin|depth=1 in|shape=1.5", "shape", "at most 1"},
		{"finish|area=3 m2|coats=0|coverage=12 m2/L", "coats", "at least 1"},
		{"finish|area=3 m2|coats=2|coverage=12", "coverage", "unit is missing"},
		{"strips|blank_width=20 in|board_width=1/4 in|rough_edges=2|kerf=1/8 in|jointing=1/32 in", "board_width", "width left of the board"},
		{"strips|blank_width=20 in|board_width=6 in|rough_edges=3|kerf=1/8 in|jointing=0 in", "rough_edges", "at most 2"},
		{"thickness|rough=1.1 in|wanted=3/4 in", "surfaced", "measure it"},
		{"thickness|rough=4/4|surfaced=1 1/4 in|wanted=3/4 in", "surfaced", "thicker than the rough"},
		{"fits|space=36 in|size=0 in", "size", "above 0 mm"},
		{"stand-up|length=82 in", "width", "is missing"},
		{"cut-down|made=19 in|wanted=20 in", "wanted", "no more than what was made"},
		{"cut-down|made=20 in|wanted=19 in|keep=middle", "keep", "left, right, none"},
		{"margin|cost=100|margin=100%", "margin", "at most 99.9 %"},
		{"margin|cost=100", "margin", "either margin, or markup"},
		{"emc|--loud", "--loud", "unknown flag"},
		{"emc|70F", "70F", "is not key=value"},
		{"plate|wood=red-oak", "plate", "no topic"},
		{"portal|pipe=3/4", "portal", "no topic"},
	} {
		t.Run(c.call, func(t *testing.T) {
			var out, errs bytes.Buffer
			if code := Run(strings.Split(c.call, "|"), &out, &errs); code != BadInput {
				t.Fatalf("exit %d, want %d; %s%s", code, BadInput, out.String(), errs.String())
			}
			if out.Len() > 0 {
				t.Errorf("standard output is not empty: %s", out.String())
			}
			for _, want := range []string{"error: ", c.key, c.says} {
				if !strings.Contains(errs.String(), want) {
					t.Errorf("%q does not say %q", errs.String(), want)
				}
			}
		})
	}
}
