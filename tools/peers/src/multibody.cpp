// multibody CASE REPEATS: times Simbody's projectQ, the projection of a position
// onto its constraints, on a corner or an axle. The travel is a locked slider.
#include <Simbody.h>

#include <memory>

extern "C" {
#include "case.h"
}

using namespace SimTK;

static Vec3 V(vec v) { return Vec3(v.x, v.y, v.z); }

struct Model {
	MultibodySystem system;
	SimbodyMatterSubsystem matter{system};
	const kase &k;
	MobilizedBody::Slider travel; // moves up by the travel
	MobilizedBody wheel;          // carries the spin axis
	Vec3 spin;
	State start;

	explicit Model(const kase &k) : k(k), spin(V(spin_axis(&k))) {
		Rotation up(-Pi / 2, YAxis); // a slider moves along its frame's x
		travel = MobilizedBody::Slider(matter.Ground(), Transform(up), Body::Massless(), Transform(up));
		if (std::string(k.kind) == "solid-axle") buildAxle();
		else buildCorner();
		start = system.realizeTopology();
	}

	Vec3 at(const std::string &name) const { return V(point(&k, name.c_str())); }

	static Body::Rigid solid() { return Body::Rigid(MassProperties(1, Vec3(0), Inertia(1))); }

	// rod joins a ground point to a point of a body whose origin stands at o.
	void rod(const std::string &inner, const std::string &outer, MobilizedBody &b, Vec3 o) {
		Constraint::Rod(matter.Ground(), at(inner), b, at(outer) - o, (at(outer) - at(inner)).norm());
	}

	void buildCorner() {
		Vec3 o = at("wheelCentre");
		MobilizedBody::Planar plane(travel, Transform(o), Body::Massless(), Transform());
		wheel = MobilizedBody::Universal(plane, Transform(), solid(), Transform());
		std::string kind = k.kind;
		if (kind == "multi-link") {
			for (std::string i : {"0", "1", "2", "3"}) rod("rods." + i + ".inner", "rods." + i + ".outer", wheel, o);
		} else {
			rod("lowerFrontPivot", "lowerBallJoint", wheel, o);
			rod("lowerRearPivot", "lowerBallJoint", wheel, o);
		}
		if (kind == "double-wishbone") {
			rod("upperFrontPivot", "upperBallJoint", wheel, o);
			rod("upperRearPivot", "upperBallJoint", wheel, o);
		}
		if (kind == "strut") {
			Vec3 low = at("strutLower"), top = at("strutTop");
			Constraint::PointOnLine(wheel, UnitVec3(top - low), low - o, matter.Ground(), top);
		}
		rod("tieRodInner", "tieRodOuter", wheel, o);
	}

	void buildAxle() {
		Vec3 left = at("left.wheelCentres"), right = at("right.wheelCentres"), o = (left + right) / 2;
		MobilizedBody::Free beam(matter.Ground(), Transform(o), solid(), Transform());
		for (std::string i : {"0", "1", "2", "3"}) rod("links." + i + ".inner", "links." + i + ".outer", beam, o);
		MobilizedBody end[2];
		Vec3 foot[2];
		for (int i = 0; i < 2; i++) {
			std::string side = i ? "right" : "left";
			foot[i] = at(side + ".kingpins.1");
			Rotation pin(UnitVec3(at(side + ".kingpins.0") - foot[i]), ZAxis);
			end[i] = MobilizedBody::Pin(beam, Transform(pin, foot[i] - o), solid(), Transform(pin, Vec3(0)));
			Vec3 centre = i ? right : left;
			Constraint::PointInPlane(travel, UnitVec3(0, 0, 1), centre[2], end[i], centre - foot[i]);
		}
		int pulled = k.dragRight;
		rod("dragLink.inner", "dragLink.outer", end[pulled], foot[pulled]);
		Vec3 a = at("left.steeringArmBalls"), b = at("right.steeringArmBalls");
		Constraint::Rod(end[0], a - foot[0], end[1], b - foot[1], (a - b).norm());
		wheel = end[0];
	}

	void sweep(double *toe) {
		int zero = zero_of(&k);
		for (int way = 1; way >= -1; way -= 2) {
			State s = start;
			for (int i = way > 0 ? zero : zero - 1; i >= 0 && i < k.travels; i += way) {
				travel.lockAt(s, k.travel[i]);
				system.realize(s, Stage::Time);
				system.prescribeQ(s);
				system.projectQ(s, 1e-10);
				system.realize(s, Stage::Position);
				Vec3 e = wheel.getBodyRotation(s) * spin;
				toe[i] = std::atan2(e[0], e[1]) / DEG;
			}
		}
	}
};

int main(int argc, char **argv) {
	static kase k;
	static double toe[MAX_TRAVELS];
	if (argc < 3 || !read_case(argv[1], &k)) return 1;
	Model m(k);
	for (int r = 0; r < atoi(argv[2]); r++) {
		double t = now_ns();
		m.sweep(toe);
		printf("time %.1f\n", now_ns() - t);
	}
	for (int i = 0; i < k.travels; i++) printf("toe %.12f\n", toe[i]);
	return 0;
}
