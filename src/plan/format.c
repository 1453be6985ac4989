/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/format.h"

#include "core/plan.h"

#include <math.h>

/* One row for each key: NUMBER ("length_mm", BsSlab, length, slab_length) reads the member `length`
 * of a BsSlab and accepts what bs_limits.slab_length does. A NEED_ row must be in the file. */
#define ROW(name, type, member, is)                                                                \
  .key = (name), .kind = (is), .offset = G_STRUCT_OFFSET (type, member)
#define LIMITED(name, type, member, is, range)                                                     \
  ROW (name, type, member, is), .limit = &bs_limits.range

#define NUMBER(name, type, member, range)                                                          \
  {                                                                                                \
    LIMITED (name, type, member, BS_MEMBER_NUMBER, range)                                          \
  }
#define NEED_NUMBER(name, type, member, range)                                                     \
  {                                                                                                \
    LIMITED (name, type, member, BS_MEMBER_NUMBER, range), .is_required = TRUE                     \
  }
#define COUNT(name, type, member, range)                                                           \
  {                                                                                                \
    LIMITED (name, type, member, BS_MEMBER_COUNT, range)                                           \
  }
#define NEED_COUNT(name, type, member, range)                                                      \
  {                                                                                                \
    LIMITED (name, type, member, BS_MEMBER_COUNT, range), .is_required = TRUE                      \
  }
#define AMOUNT(name, type, member, range)                                                          \
  {                                                                                                \
    LIMITED (name, type, member, BS_MEMBER_AMOUNT, range)                                          \
  }
#define FLAG(name, type, member)                                                                   \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_FLAG)                                                       \
  }
#define TEXT(name, type, member)                                                                   \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_TEXT)                                                       \
  }
#define NEED_TEXT(name, type, member)                                                              \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_TEXT), .is_required = TRUE                                  \
  }
#define CHOICE(name, type, member, names)                                                          \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_CHOICE), .choices = (names)                                 \
  }
#define NEED_CHOICE(name, type, member, names)                                                     \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_CHOICE), .choices = (names), .is_required = TRUE            \
  }
#define OBJECT(name, type, member, of)                                                             \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_OBJECT), .shape = &(of)                                     \
  }
#define NEED_OBJECT(name, type, member, of)                                                        \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_OBJECT), .shape = &(of), .is_required = TRUE                \
  }
#define PARTS(name, type, member, of, most)                                                        \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_PARTS), .shape = &(of), .max_length = (most)                \
  }
#define VALUES(name, type, member, of, most)                                                       \
  {                                                                                                \
    ROW (name, type, member, BS_MEMBER_VALUES), .shape = &(of), .max_length = (most)               \
  }
#define END                                                                                        \
  {                                                                                                \
    NULL                                                                                           \
  }

#define UNKNOWN(type) .unknown = G_STRUCT_OFFSET (type, unknown)
#define NEW_PART(function) .new_part = (gpointer (*) (const char *)) (function)

static const char *const layup_names[] = { "on-edge", "on-flat", NULL };
static const char *const alignment_names[]
    = { "undersides-down", "show-faces-down", "ends-flush", "middles-level", NULL };
static const char *const flatten_names[] = { "hand", "sled", "planer", NULL };
static const char *const fixed_line_names[] = { "middle", "front", "back", NULL };
static const char *const unit_names[] = { "metric", "inch", NULL };
static const char *const wood_kind_names[] = { "softwood", "hardwood", NULL };
static const char *const wish_names[] = { "off", "little", "normal", "much", NULL };
static const char *const pin_names[] = { "place", "neighbours", "top-up", "underside-up", NULL };
static const char *const price_unit_names[] = { "piece", "board-foot", "cubic-metre", NULL };
static const char *const saw_first_names[] = { "either", "crosscut", "rip", NULL };
static const char *const bond_names[] = { "easy", "well", "satisfactory", "difficult", NULL };

const char *const bs_defect_names[]
    = { "knot", "check", "wane", "stain", "bark-pocket", "sapwood", "pith", "hole", NULL };
const char *const bs_face_names[] = { "left", "right", "top", "underside", NULL };
const char *const bs_flatten_work_keys[]
    = { "shimmed", "show-face-first", "underside-first", NULL };
const char *const bs_orientation_names[]
    = { "as-marked", "over", "end-for-end", "over-and-end", NULL };

static const BsMember climate_members[] = {
  NUMBER ("temperature_C", BsClimate, temperature_c, temperature),
  NUMBER ("humidity_pct", BsClimate, humidity_pct, humidity),
  END,
};

static const BsShape climate_shape = { climate_members, .unknown = -1 };

static const BsMember uncertainty_members[] = {
  NUMBER ("height_mm", BsUncertainty, height, uncertainty),
  NUMBER ("warp_mm", BsUncertainty, warp, uncertainty),
  NUMBER ("offset_mm", BsUncertainty, offset, uncertainty),
  NUMBER ("rock_mm", BsUncertainty, rock, uncertainty),
  END,
};

static const BsShape uncertainty_shape = { uncertainty_members, .unknown = -1 };

static const BsMember wood_limit_members[] = {
  NUMBER ("max_mass_kg", BsWoodLimits, max_kg, slab_mass),
  NUMBER ("max_movement_mm", BsWoodLimits, max_movement, slab_movement),
  NUMBER ("max_cost_minor", BsWoodLimits, max_cost_minor, price),
  NUMBER ("rough_thickness_mm", BsWoodLimits, rough_thickness, board_thickness),
  FLAG ("may_bond_difficult", BsWoodLimits, may_bond_difficult),
  END,
};

static const BsShape wood_limits_shape = { wood_limit_members, .unknown = -1 };

static const BsMember fixing_members[] = {
  CHOICE ("line", BsFixing, line, fixed_line_names),
  NUMBER ("screw_mm", BsFixing, screw, slot_screw),
  NUMBER ("play_mm", BsFixing, play, slot_play),
  END,
};

static const BsShape fixing_shape = { fixing_members, .unknown = -1 };

static const BsMember slab_members[] = {
  NEED_NUMBER ("length_mm", BsSlab, length, slab_length),
  NEED_NUMBER ("width_mm", BsSlab, width, slab_width),
  NEED_NUMBER ("thickness_mm", BsSlab, thickness, slab_thickness),
  CHOICE ("layup", BsSlab, layup, layup_names),
  FLAG ("alternate_hearts", BsSlab, alternate_hearts),
  FLAG ("shows_front", BsSlab, shows_front),
  FLAG ("shows_back", BsSlab, shows_back),
  FLAG ("shows_underside", BsSlab, shows_underside),
  FLAG ("shows_ends", BsSlab, shows_ends),
  CHOICE ("alignment", BsSlab, alignment, alignment_names),
  CHOICE ("flatten_by", BsSlab, flatten_method, flatten_names),
  CHOICE ("flatten_work", BsSlab, flatten_work, bs_flatten_work_keys),
  NUMBER ("allowance_mm", BsSlab, allowance, allowance),
  OBJECT ("uncertainty", BsSlab, uncertainty, uncertainty_shape),
  OBJECT ("dry_season", BsSlab, dry_season, climate_shape),
  OBJECT ("damp_season", BsSlab, damp_season, climate_shape),
  NUMBER ("hardness_low_N", BsSlab, hardness_low_n, hardness),
  NUMBER ("hardness_high_N", BsSlab, hardness_high_n, hardness),
  OBJECT ("wood_limits", BsSlab, wood_limits, wood_limits_shape),
  OBJECT ("fixing", BsSlab, fixing, fixing_shape),
  END,
};

const BsShape bs_slab_shape = { slab_members, UNKNOWN (BsSlab) };

static const BsMember times_members[] = {
  NUMBER ("spread_s_per_m2", BsHandTimes, spread_s_per_m2, spread_time),
  NUMBER ("joint_s", BsHandTimes, joint_s, hand_time),
  NUMBER ("place_s", BsHandTimes, place_s, hand_time),
  NUMBER ("align_s", BsHandTimes, align_s, hand_time),
  NUMBER ("tighten_s", BsHandTimes, tighten_s, hand_time),
  END,
};

static const BsShape times_shape = { times_members, .unknown = -1 };

static const BsMember saw_members[] = {
  NUMBER ("kerf_mm", BsSaw, kerf, kerf),
  NUMBER ("end_trim_mm", BsSaw, end_trim, trim),
  NUMBER ("edge_trim_mm", BsSaw, edge_trim, trim),
  NUMBER ("edge_allowance_mm", BsSaw, edge_allowance, allowance),
  NUMBER ("spring_mm_per_m", BsSaw, spring_per_m, spring),
  NUMBER ("min_offcut_mm", BsSaw, min_offcut, offcut),
  CHOICE ("first", BsSaw, first, saw_first_names),
  END,
};

static const BsShape saw_shape = { saw_members, .unknown = -1 };

static const BsMember clamp_members[] = {
  NEED_TEXT ("id", BsClampKind, id),
  TEXT ("name", BsClampKind, name),
  NEED_COUNT ("count", BsClampKind, count, clamp_count),
  NEED_NUMBER ("max_force_N", BsClampKind, max_force_n, clamp_force),
  NEED_NUMBER ("reach_mm", BsClampKind, reach, clamp_reach),
  NEED_NUMBER ("head_width_mm", BsClampKind, head_width, clamp_head),
  NEED_NUMBER ("head_height_mm", BsClampKind, head_height, clamp_head),
  NUMBER ("screw_mean_diameter_mm", BsClampKind, screw_mean_diameter, screw_diameter),
  NUMBER ("screw_lead_mm", BsClampKind, screw_lead, screw_lead),
  END,
};

const BsShape bs_clamp_shape
    = { clamp_members, UNKNOWN (BsClampKind), NEW_PART (bs_clamp_kind_new) };

static const BsMember caul_members[] = {
  NEED_TEXT ("id", BsCaulKind, id),
  TEXT ("name", BsCaulKind, name),
  NEED_COUNT ("count", BsCaulKind, count, caul_count),
  NEED_NUMBER ("length_mm", BsCaulKind, length, caul_length),
  NEED_NUMBER ("thickness_mm", BsCaulKind, thickness, caul_thickness),
  NEED_NUMBER ("height_mm", BsCaulKind, height, caul_height),
  NEED_NUMBER ("moe_MPa", BsCaulKind, moe_mpa, moe),
  END,
};

const BsShape bs_caul_shape = { caul_members, UNKNOWN (BsCaulKind), NEW_PART (bs_caul_kind_new) };

static const BsMember shop_members[] = {
  OBJECT ("climate", BsShop, climate, climate_shape),
  COUNT ("people", BsShop, people, people),
  NUMBER ("planer_width_mm", BsShop, planer_width, planer_width),
  NUMBER ("jointer_width_mm", BsShop, jointer_width, jointer_width),
  NUMBER ("max_lift_kg", BsShop, max_lift_kg, max_lift),
  OBJECT ("times", BsShop, times, times_shape),
  OBJECT ("saw", BsShop, saw, saw_shape),
  PARTS ("clamps", BsShop, clamps, bs_clamp_shape, BS_MAX_KINDS),
  PARTS ("cauls", BsShop, cauls, bs_caul_shape, BS_MAX_KINDS),
  END,
};

const BsShape bs_shop_shape = { shop_members, UNKNOWN (BsShop) };

static const BsMember buying_members[] = {
  NUMBER ("confidence_pct", BsBuying, confidence_pct, confidence),
  NUMBER ("spare_pct", BsBuying, spare_pct, spare),
  NUMBER ("lamination_size_mm", BsBuying, lamination_size, lamination_thickness),
  END,
};

static const BsShape buying_shape = { buying_members, .unknown = -1 };

static const BsMember adhesive_members[] = {
  TEXT ("id", BsAdhesive, id),
  NEED_TEXT ("name", BsAdhesive, name),
  NEED_NUMBER ("open_s", BsAdhesive, open_s, assembly_time),
  NEED_NUMBER ("total_s", BsAdhesive, total_s, assembly_time),
  NEED_NUMBER ("clamp_s", BsAdhesive, clamp_s, clamp_time),
  NEED_NUMBER ("min_temperature_C", BsAdhesive, min_temperature_c, adhesive_temperature),
  NEED_NUMBER ("spread_g_per_m2", BsAdhesive, spread_g_per_m2, spread),
  NEED_NUMBER ("min_pressure_MPa", BsAdhesive, min_pressure_mpa, pressure),
  NEED_NUMBER ("max_pressure_MPa", BsAdhesive, max_pressure_mpa, pressure),
  FLAG ("is_waterborne", BsAdhesive, is_waterborne),
  FLAG ("is_moisture_curing", BsAdhesive, is_moisture_curing),
  TEXT ("source", BsAdhesive, source),
  FLAG ("is_own_figures", BsAdhesive, is_own_figures),
  NUMBER ("price_minor_per_kg", BsAdhesive, price_minor_per_kg, price_rate),
  END,
};

const BsShape bs_adhesive_shape = { adhesive_members, UNKNOWN (BsAdhesive) };

static const BsMember wood_members[] = {
  NEED_TEXT ("id", BsWood, id),
  NEED_TEXT ("name", BsWood, name),
  TEXT ("botanical", BsWood, botanical),
  CHOICE ("kind", BsWood, is_hardwood, wood_kind_names),
  NUMBER ("sg_12", BsWood, sg_12, sg),
  NUMBER ("side_hardness_N", BsWood, side_hardness_n, hardness),
  NUMBER ("moe_MPa", BsWood, moe_mpa, moe),
  NUMBER ("comp_perp_MPa", BsWood, comp_perp_mpa, comp_perp),
  NUMBER ("shrink_radial_pct", BsWood, shrink_radial_pct, shrinkage),
  NUMBER ("shrink_tangential_pct", BsWood, shrink_tangential_pct, shrinkage),
  NUMBER ("coef_radial_per_pct", BsWood, coef_radial, movement),
  NUMBER ("coef_tangential_per_pct", BsWood, coef_tangential, movement),
  CHOICE ("bond_class", BsWood, bond, bond_names),
  NUMBER ("price_minor_per_m3", BsWood, price_minor_per_m3, price_rate),
  TEXT ("source", BsWood, source),
  FLAG ("is_from_memory", BsWood, is_from_memory),
  END,
};

const BsShape bs_wood_shape = { wood_members, UNKNOWN (BsWood), NEW_PART (bs_wood_new) };

static const BsMember defect_members[] = {
  NEED_CHOICE ("kind", BsDefect, kind, bs_defect_names),
  NEED_CHOICE ("face", BsDefect, face, bs_face_names),
  NEED_NUMBER ("x_from_mm", BsDefect, x_from, defect_along),
  NEED_NUMBER ("x_to_mm", BsDefect, x_to, defect_along),
  NEED_NUMBER ("across_from_mm", BsDefect, across_from, defect_across),
  NEED_NUMBER ("across_to_mm", BsDefect, across_to, defect_across),
  NEED_NUMBER ("severity", BsDefect, severity, severity),
  END,
};

static const BsShape defect_shape
    = { defect_members, UNKNOWN (BsDefect), .size = sizeof (BsDefect) };

static const BsMember board_members[] = {
  NEED_TEXT ("id", BsBoard, id),
  TEXT ("label", BsBoard, label),
  TEXT ("wood", BsBoard, wood),
  NEED_NUMBER ("length_mm", BsBoard, length, board_length),
  NEED_NUMBER ("width_mm", BsBoard, width, board_width),
  NEED_NUMBER ("thickness_mm", BsBoard, thickness, board_thickness),
  NUMBER ("moisture_pct", BsBoard, moisture_pct, moisture),
  AMOUNT ("price_minor", BsBoard, price_minor, price),
  NUMBER ("bow_mm", BsBoard, bow, warp),
  NUMBER ("crook_mm", BsBoard, crook, warp),
  NUMBER ("cup_mm", BsBoard, cup, warp),
  NUMBER ("twist_mm", BsBoard, twist, warp),
  NUMBER ("pith_y_mm", BsBoard, pith_y, pith),
  NUMBER ("pith_z_mm", BsBoard, pith_z, pith),
  COUNT ("run_out_top", BsBoard, run_out[BS_FACE_TOP], run_out),
  COUNT ("run_out_underside", BsBoard, run_out[BS_FACE_UNDERSIDE], run_out),
  COUNT ("run_out_front", BsBoard, run_out[BS_FACE_LEFT], run_out),
  COUNT ("run_out_back", BsBoard, run_out[BS_FACE_RIGHT], run_out),
  VALUES ("defects", BsBoard, defects, defect_shape, BS_MAX_DEFECTS),
  TEXT ("photo_top", BsBoard, photo_top),
  TEXT ("photo_underside", BsBoard, photo_underside),
  END,
};

const BsShape bs_board_shape = { board_members, UNKNOWN (BsBoard), NEW_PART (bs_board_new) };

static const BsMember offer_length_members[] = {
  NEED_NUMBER ("length_mm", BsOfferLength, length, board_length),
  NEED_COUNT ("supply", BsOfferLength, supply, supply),
  END,
};

static const BsShape offer_length_shape
    = { offer_length_members, UNKNOWN (BsOfferLength), .size = sizeof (BsOfferLength) };

static const BsMember offer_members[] = {
  NEED_TEXT ("id", BsOffer, id),
  TEXT ("yard", BsOffer, yard),
  TEXT ("wood", BsOffer, wood),
  NEED_NUMBER ("thickness_mm", BsOffer, thickness, board_thickness),
  NEED_NUMBER ("width_from_mm", BsOffer, width_least, board_width),
  NEED_NUMBER ("width_to_mm", BsOffer, width_most, board_width),
  FLAG ("may_pick", BsOffer, may_pick),
  CHOICE ("price_unit", BsOffer, price_unit, price_unit_names),
  AMOUNT ("price_minor", BsOffer, price_minor, price),
  VALUES ("lengths", BsOffer, lengths, offer_length_shape, BS_MAX_OFFER_LENGTHS),
  END,
};

const BsShape bs_offer_shape = { offer_members, UNKNOWN (BsOffer), NEW_PART (bs_offer_new) };

static const BsMember part_members[] = {
  NEED_TEXT ("id", BsPart, id),
  TEXT ("name", BsPart, name),
  TEXT ("wood", BsPart, wood),
  NEED_COUNT ("count", BsPart, count, part_count),
  NEED_NUMBER ("length_mm", BsPart, length, lamination_length),
  NEED_NUMBER ("width_mm", BsPart, width, part_width),
  NEED_NUMBER ("thickness_mm", BsPart, thickness, part_thickness),
  COUNT ("clear_faces", BsPart, clear_faces, clear_faces),
  COUNT ("clear_edges", BsPart, clear_edges, clear_faces),
  FLAG ("is_on_show", BsPart, is_on_show),
  END,
};

const BsShape bs_part_shape = { part_members, UNKNOWN (BsPart), NEW_PART (bs_part_new) };

static const BsMember cut_members[] = {
  NEED_TEXT ("board", BsCut, board),
  NEED_TEXT ("piece", BsCut, piece),
  NEED_NUMBER ("x_mm", BsCut, x, cut_along),
  NEED_NUMBER ("y_mm", BsCut, y, cut_across),
  NEED_NUMBER ("length_mm", BsCut, length, cut_along),
  NEED_NUMBER ("width_mm", BsCut, width, cut_across),
  FLAG ("is_pinned", BsCut, is_pinned),
  FLAG ("is_cut", BsCut, is_cut),
  END,
};

static const BsShape cut_shape = { cut_members, UNKNOWN (BsCut), .size = sizeof (BsCut) };

static const BsMember lamination_members[] = {
  NEED_TEXT ("id", BsLamination, id),
  TEXT ("label", BsLamination, label),
  TEXT ("board", BsLamination, board),
  TEXT ("wood", BsLamination, wood),
  NEED_NUMBER ("length_mm", BsLamination, length, lamination_length),
  NEED_NUMBER ("thickness_mm", BsLamination, thickness, lamination_thickness),
  NEED_NUMBER ("height_mm", BsLamination, height, lamination_height),
  NUMBER ("bow_mm", BsLamination, bow, warp),
  NUMBER ("crook_mm", BsLamination, crook, warp),
  NUMBER ("cup_mm", BsLamination, cup, warp),
  NUMBER ("twist_mm", BsLamination, twist, warp),
  NUMBER ("taper_mm", BsLamination, taper, warp),
  NUMBER ("pith_y_mm", BsLamination, pith_y, pith),
  NUMBER ("pith_z_mm", BsLamination, pith_z, pith),
  COUNT ("run_out_top", BsLamination, run_out_top, run_out),
  COUNT ("run_out_underside", BsLamination, run_out_underside, run_out),
  NUMBER ("lightness", BsLamination, lightness, lightness),
  NUMBER ("moisture_pct", BsLamination, moisture_pct, moisture),
  VALUES ("defects", BsLamination, defects, defect_shape, BS_MAX_DEFECTS),
  END,
};

/* Warp that the file does not give was not measured. */
static gpointer
new_unmeasured_lamination (const char *id)
{
  BsLamination *lamination = bs_lamination_new (id);

  lamination->bow = NAN;
  lamination->crook = NAN;
  lamination->cup = NAN;
  lamination->twist = NAN;
  lamination->taper = NAN;
  return lamination;
}

const BsShape bs_lamination_shape
    = { lamination_members, UNKNOWN (BsLamination), .new_part = new_unmeasured_lamination };

static const BsMember placement_members[] = {
  NEED_TEXT ("lamination", BsPlacement, lamination),
  CHOICE ("orientation", BsPlacement, orientation, bs_orientation_names),
  NUMBER ("start_mm", BsPlacement, start, start),
  END,
};

static const BsShape placement_shape
    = { placement_members, UNKNOWN (BsPlacement), .size = sizeof (BsPlacement) };

static const BsMember pack_members[] = {
  NEED_COUNT ("first", BsPack, first, pack_first),
  NEED_COUNT ("count", BsPack, count, pack_count),
  END,
};

static const BsShape pack_shape = { pack_members, UNKNOWN (BsPack), .size = sizeof (BsPack) };

static const BsMember cuts_members[] = {
  VALUES ("cuts", BsPlan, cuts, cut_shape, BS_MAX_CUTS),
  END,
};

const BsShape bs_cuts_shape = { cuts_members, .unknown = -1 };
static const BsMember placed_clamp_members[] = {
  NEED_TEXT ("kind", BsPlacedClamp, kind),
  NEED_NUMBER ("x_mm", BsPlacedClamp, x, placed_x),
  NEED_NUMBER ("force_N", BsPlacedClamp, force_n, placed_force),
  FLAG ("is_above", BsPlacedClamp, is_above),
  END,
};

static const BsShape placed_clamp_shape
    = { placed_clamp_members, UNKNOWN (BsPlacedClamp), .size = sizeof (BsPlacedClamp) };

static const BsMember wishes_members[] = {
  CHOICE ("looks", BsOrderWishes, looks, wish_names),
  CHOICE ("easy_planing", BsOrderWishes, easy_planing, wish_names),
  CHOICE ("stays_flat", BsOrderWishes, stays_flat, wish_names),
  FLAG ("uses_rack", BsOrderWishes, uses_rack),
  END,
};

const BsShape bs_wishes_shape = { wishes_members, .unknown = -1 };

static const BsMember pin_members[] = {
  NEED_CHOICE ("kind", BsPin, kind, pin_names),
  NEED_TEXT ("lamination", BsPin, lamination),
  COUNT ("place", BsPin, place, pin_place),
  TEXT ("other", BsPin, other),
  END,
};

static const BsPin blank_pin = { .place = -1 };

static const BsShape pin_shape
    = { pin_members, UNKNOWN (BsPin), .size = sizeof (BsPin), .blank = &blank_pin };

static const BsMember plan_members[] = {
  TEXT ("name", BsPlan, name),
  TEXT ("note", BsPlan, note),
  CHOICE ("units", BsPlan, units, unit_names),
  TEXT ("currency", BsPlan, currency),
  NEED_OBJECT ("slab", BsPlan, slab, bs_slab_shape),
  OBJECT ("shop", BsPlan, shop, bs_shop_shape),
  OBJECT ("buying", BsPlan, buying, buying_shape),
  OBJECT ("adhesive", BsPlan, adhesive, bs_adhesive_shape),
  PARTS ("woods", BsPlan, woods, bs_wood_shape, BS_MAX_WOODS),
  PARTS ("boards", BsPlan, boards, bs_board_shape, BS_MAX_BOARDS),
  PARTS ("offers", BsPlan, offers, bs_offer_shape, BS_MAX_OFFERS),
  PARTS ("parts", BsPlan, parts, bs_part_shape, BS_MAX_PARTS),
  VALUES ("cuts", BsPlan, cuts, cut_shape, BS_MAX_CUTS),
  PARTS ("laminations", BsPlan, laminations, bs_lamination_shape, BS_MAX_LAMINATIONS),
  VALUES ("order", BsPlan, order, placement_shape, BS_MAX_LAMINATIONS),
  VALUES ("packs", BsPlan, packs, pack_shape, BS_MAX_LAMINATIONS),
  OBJECT ("wishes", BsPlan, wishes, bs_wishes_shape),
  VALUES ("pins", BsPlan, pins, pin_shape, BS_MAX_PINS),
  VALUES ("placed_clamps", BsPlan, placed_clamps, placed_clamp_shape, BS_MAX_PLACED_CLAMPS),
  END,
};

const BsShape bs_plan_shape = { plan_members, UNKNOWN (BsPlan) };
