/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/limits.h"

#define LENGTH(least, most)                                                                        \
  {                                                                                                \
    least, most, BS_QUANTITY_LENGTH                                                                \
  }
#define TIME(least, most)                                                                          \
  {                                                                                                \
    least, most, BS_QUANTITY_TIME                                                                  \
  }
#define PERCENT(least, most)                                                                       \
  {                                                                                                \
    least, most, BS_QUANTITY_PERCENT                                                               \
  }
#define COUNT(least, most)                                                                         \
  {                                                                                                \
    least, most, BS_QUANTITY_COUNT                                                                 \
  }
#define RATIO(least, most)                                                                         \
  {                                                                                                \
    least, most, BS_QUANTITY_RATIO                                                                 \
  }

/* Chosen here, by what can be lifted, bought or read off; those that rest on a model name it. */
const BsLimits bs_limits = {
  .slab_length = LENGTH (50.0, 15000.0),
  .slab_width = LENGTH (20.0, 5000.0),
  .slab_thickness = LENGTH (5.0, 1000.0),
  .allowance = LENGTH (0.0, 20.0),
  .uncertainty = { 0.0, 10.0, BS_QUANTITY_FINE_LENGTH },
  .temperature = { -40.0, 60.0, BS_QUANTITY_TEMPERATURE },
  .humidity = PERCENT (0.0, 100.0),
  .moisture = PERCENT (0.0, 150.0), /* green wood holds more water than its own dry mass */

  .lamination_length = LENGTH (20.0, 15000.0),
  .lamination_thickness = LENGTH (2.0, 500.0),
  .lamination_height = LENGTH (2.0, 1000.0),
  .warp = LENGTH (-200.0, 200.0),
  .pith = LENGTH (-5000.0, 5000.0),
  .start = LENGTH (0.0, 15000.0),
  .defect_along = LENGTH (0.0, 15000.0),
  .defect_across = LENGTH (0.0, 1000.0),
  .severity = RATIO (0.0, 2.0),
  .run_out = COUNT (-1.0, 1.0),
  .lightness = RATIO (0.0, 100.0), /* CIE L* */

  .people = COUNT (1.0, 20.0),
  .planer_width = LENGTH (0.0, 3000.0),
  .jointer_width = LENGTH (0.0, 1000.0),
  .max_lift = { 1.0, 2000.0, BS_QUANTITY_MASS },
  .spread_time = { 0.0, 36000.0, BS_QUANTITY_SPREAD_TIME },
  .hand_time = TIME (0.0, 3600.0),

  .placed_x = LENGTH (0.0, 15000.0),
  .placed_force = { 0.0, 200000.0, BS_QUANTITY_FORCE },
  .clamp_count = COUNT (0.0, 500.0),
  .clamp_force = { 10.0, 200000.0, BS_QUANTITY_FORCE },
  .clamp_reach = LENGTH (10.0, 10000.0),
  .clamp_head = LENGTH (5.0, 500.0),
  .screw_diameter = LENGTH (3.0, 100.0),
  .screw_lead = LENGTH (0.2, 50.0),
  .caul_count = COUNT (0.0, 500.0),
  .caul_length = LENGTH (20.0, 15000.0),
  .caul_thickness = LENGTH (1.0, 500.0),
  .caul_height = LENGTH (1.0, 1000.0),

  .assembly_time = TIME (10.0, 86400.0),
  .clamp_time = TIME (60.0, 1209600.0),
  .adhesive_temperature = { -10.0, 60.0, BS_QUANTITY_TEMPERATURE },
  .spread = { 10.0, 2000.0, BS_QUANTITY_SPREAD },
  .pressure = { 0.001, 10.0, BS_QUANTITY_PRESSURE },

  .sg = RATIO (0.05, 1.5), /* the pores filled, wood substance comes to about 1.5 */
  .hardness = { 100.0, 30000.0, BS_QUANTITY_FORCE },
  .moe = { 500.0, 40000.0, BS_QUANTITY_PRESSURE },
  .comp_perp = { 0.2, 60.0, BS_QUANTITY_PRESSURE },
  .shrinkage = PERCENT (0.0, 25.0),
  .movement = RATIO (0.0, 0.01),

  .slab_mass = { 0.1, 20000.0, BS_QUANTITY_MASS },
  .slab_movement = LENGTH (0.0, 500.0),
  .slot_screw = LENGTH (1.0, 50.0),
  .slot_play = LENGTH (0.0, 50.0),

  .board_length = LENGTH (50.0, 15000.0),
  .board_width = LENGTH (10.0, 2000.0),
  .board_thickness = LENGTH (2.0, 500.0),
  .price = COUNT (0.0, 1e9),
  .price_rate = RATIO (0.0, 1e9),

  .kerf = LENGTH (0.0, 20.0),
  .trim = LENGTH (0.0, 500.0),
  .spring = LENGTH (0.0, 50.0),
  .offcut = LENGTH (0.0, 15000.0),
  .supply = COUNT (-1.0, 1e6),
  .part_count = COUNT (1.0, 1000.0),
  .part_width = LENGTH (2.0, 2000.0),
  .part_thickness = LENGTH (2.0, 500.0),
  .clear_faces = COUNT (0.0, 2.0),
  .confidence = PERCENT (50.0, 99.0), /* bs_milling_need () */
  .spare = PERCENT (0.0, 200.0),
  .cut_along = LENGTH (0.0, 15000.0),
  .cut_across = LENGTH (0.0, 2000.0),

  .pack_first = COUNT (0.0, BS_MAX_LAMINATIONS - 2.0),
  .pack_count = COUNT (2.0, BS_MAX_LAMINATIONS),
  .pin_place = COUNT (0.0, BS_MAX_LAMINATIONS - 1.0),
};
