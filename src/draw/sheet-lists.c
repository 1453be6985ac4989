/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/clamps.h"
#include "core/units.h"
#include "words/words.h"

static const char *
name_run_out (int run_out)
{
  if (run_out == 0)
    return _ ("either way");
  return run_out > 0 ? _ ("right end") : _ ("left end");
}

static const char *
name_heart_side (const BsStack *stack, int side)
{
  if (side == 0)
    return "\342\200\223";
  if (stack->plan->slab.layup == BS_LAYUP_ON_FLAT)
    return side > 0 ? C_ ("heart side", "up") : C_ ("heart side", "down");
  return side > 0 ? C_ ("heart side", "back") : C_ ("heart side", "front");
}

/* TRUE when some lamination does not begin at the left end. */
static gboolean
start_apart (const BsStack *stack)
{
  for (guint i = 0; i < stack->n; i++)
    if (stack->placed[i].x > 0.0)
      return TRUE;
  return FALSE;
}

static void
add_order (BsFlow *flow, const BsResults *results)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.07, .is_right = TRUE },
    { .from = 0.08, .width = 0.11, .is_bold = TRUE },
    { .from = 0.19, .width = 0.38 },
    { .from = 0.57, .width = 0.20 },
    { .from = 0.77, .width = 0.11 },
    { .from = 0.88, .width = 0.12, .is_right = TRUE },
  };
  const char *head[] = { C_ ("place in the order", "No."),
                         _ ("Label"),
                         _ ("How it lies"),
                         _ ("Plane towards"),
                         _ ("Heart"),
                         _ ("Starts at") };
  const BsStack *stack = results->stack;
  guint n_cells = start_apart (stack) ? G_N_ELEMENTS (cells) : G_N_ELEMENTS (cells) - 1;

  bs_flow_add_heading (flow, _ ("Order, from the front to the back"));
  bs_flow_begin_table (flow, cells, n_cells, head);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      const char *label = placed->lamination->label;
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      g_autofree char *start
          = bs_units_format_number (placed->x, BS_QUANTITY_LENGTH, stack->plan->units);
      const char *texts[] = { number,
                              label != NULL ? label : "",
                              bs_words_orientation (placed->orientation),
                              name_run_out (placed->run_out_top),
                              name_heart_side (stack, placed->heart_side),
                              start };

      bs_flow_add_row (flow, texts);
    }
}

/* TRUE when the screw of some clamp is known. */
static gboolean
has_torques (const BsPlan *plan)
{
  for (guint i = 0; i < plan->shop.clamps->len; i++)
    if (isfinite (bs_clamps_torque (g_ptr_array_index (plan->shop.clamps, i), 1.0)))
      return TRUE;
  return FALSE;
}

static void
add_clamp (BsFlow *flow, const BsPlan *plan, const BsLayoutClamp *clamp)
{
  const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, clamp->kind);
  double newton_mm = bs_clamps_torque (kind, clamp->force);
  g_autofree char *turn = g_strdup_printf ("%u", clamp->turn + 1);
  g_autofree char *where = bs_units_format (clamp->x, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *force = bs_units_format (clamp->force, BS_QUANTITY_FORCE, plan->units);
  g_autofree char *torque = isnan (newton_mm)
                                ? g_strdup ("\342\200\223")
                                : bs_units_format (newton_mm, BS_QUANTITY_TORQUE, plan->units);
  const char *texts[] = { turn,
                          where,
                          clamp->is_above ? C_ ("clamp", "above") : C_ ("clamp", "below"),
                          kind->name != NULL ? kind->name : "",
                          force,
                          torque };

  bs_flow_add_row (flow, texts);
}

static void
add_clamps (BsFlow *flow, const BsResults *results)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.08, .is_right = TRUE },
    { .from = 0.08, .width = 0.18, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.28, .width = 0.11 },
    { .from = 0.39, .width = 0.31 },
    { .from = 0.70, .width = 0.14, .is_right = TRUE },
    { .from = 0.84, .width = 0.16, .is_right = TRUE },
  };
  const char *head[] = { C_ ("order of tightening", "Turn"),
                         _ ("From the left end"),
                         _ ("Lies"),
                         _ ("Kind"),
                         _ ("Force"),
                         _ ("Torque") };
  const BsPlan *plan = results->stack->plan;
  guint n_cells = has_torques (plan) ? G_N_ELEMENTS (cells) : G_N_ELEMENTS (cells) - 1;

  if (results->set_clamps->len == 0)
    return;
  bs_flow_add_heading (flow, plan->placed_clamps->len > 0
                                 ? _ ("Clamps as placed, from the left end")
                                 : _ ("Clamps by the hand rule, from the left end"));
  bs_flow_begin_table (flow, cells, n_cells, head);
  for (guint i = 0; i < results->set_clamps->len; i++)
    add_clamp (flow, plan, &g_array_index (results->set_clamps, BsLayoutClamp, i));
  bs_flow_add_text (flow,
                    _ ("Tighten in the order of the turns, from the middle outwards, first lightly "
                       "and then once more to the full force. Torques are for a dry screw; grease "
                       "makes the same torque press a third harder."),
                    BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
}

typedef struct
{
  const char *name;
  double value;
  BsQuantity quantity;
} Figure;

static void
add_numbers (BsFlow *flow, const BsResults *results)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.64 },
    { .from = 0.64, .width = 0.36, .is_right = TRUE, .is_bold = TRUE },
  };
  const char *head[] = { _ ("What"), _ ("How much") };
  const BsFlattenResult *flat = &results->flatten;
  const BsClampRule *clamps = &results->clamps;
  const BsAssembly *times = &results->assembly;
  const Figure figures[] = {
    { N_ ("Thickness when flat"), flat->thickness, BS_QUANTITY_LENGTH },
    { N_ ("Comes off the top, at most"), flat->top_most, BS_QUANTITY_LENGTH },
    { N_ ("Comes off the underside, at most"), flat->underside_most, BS_QUANTITY_LENGTH },
    { N_ ("Largest glue line"), clamps->area, BS_QUANTITY_AREA },
    { N_ ("Recommended pressure"), clamps->pressure_mpa, BS_QUANTITY_PRESSURE },
    { N_ ("Pressure that your clamps reach, at most"), clamps->reached_mpa, BS_QUANTITY_PRESSURE },
    { N_ ("Force needed in all"), clamps->force_n, BS_QUANTITY_FORCE },
    { N_ ("Force of your clamps that fit, at most"), clamps->force_fitting_n, BS_QUANTITY_FORCE },
    { N_ ("Clamps needed for the force"), clamps->n_by_force, BS_QUANTITY_COUNT },
    { N_ ("Clamps needed to cover the length"), clamps->n_by_spacing, BS_QUANTITY_COUNT },
    { N_ ("Your clamps that fit"), clamps->n_fitting, BS_QUANTITY_COUNT },
    { N_ ("Greatest distance between clamps"), clamps->spacing, BS_QUANTITY_LENGTH },
    { N_ ("Opening of the clamps"), clamps->reach_needed, BS_QUANTITY_LENGTH },
    { N_ ("First glue to last clamp"), times->total_s, BS_QUANTITY_TIME },
    { N_ ("Time that the adhesive allows"), times->limit_s, BS_QUANTITY_TIME },
    { N_ ("Time left"), times->left_s, BS_QUANTITY_TIME },
    { N_ ("In the clamps, at least"), times->clamp_s, BS_QUANTITY_TIME },
    { N_ ("Adhesive"), results->glue_kg, BS_QUANTITY_MASS },
    { N_ ("Weight of the slab"), results->mass_kg, BS_QUANTITY_MASS },
    { N_ ("Moisture of the wood in the dry season"), results->emc_low_pct, BS_QUANTITY_PERCENT },
    { N_ ("Moisture of the wood in the damp season"), results->emc_high_pct, BS_QUANTITY_PERCENT },
  };

  bs_flow_add_heading (flow, _ ("Numbers"));
  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      g_autofree char *value
          = bs_units_format (figures[i].value, figures[i].quantity, results->stack->plan->units);
      const char *texts[] = { _ (figures[i].name), value };

      bs_flow_add_row (flow, texts);
    }
}

static const char *
get_label (const BsStack *stack, int place)
{
  const char *label = stack->placed[place].lamination->label;

  return label != NULL ? label : "";
}

/* "Run-out against its neighbours (7)": what was found, and on which laminations. */
static char *
title_finding (const BsFinding *finding, const BsStack *stack)
{
  const char *title = bs_words_finding_title (finding);

  if (finding->place < 0)
    return g_strdup (title);
  if (finding->neighbour < 0)
    /* Translators: what was found, and the label of the lamination. */
    return g_strdup_printf (_ ("%s (%s)"), title, get_label (stack, finding->place));
  /* Translators: what was found, and the labels of two neighbours. */
  return g_strdup_printf (_ ("%s (%s and %s)"), title, get_label (stack, finding->place),
                          get_label (stack, finding->neighbour));
}

/* What the person wrote about the plan. */
static void
add_note (BsFlow *flow, const char *note)
{
  if (note == NULL || *note == '\0')
    return;
  bs_flow_add_heading (flow, _ ("Note"));
  bs_flow_add_text (flow, note, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
}

static void
add_finding (BsFlow *flow, const char *title, BsFlowSign sign, const char *reason,
             const char *remedy)
{
  bs_flow_add_text (flow, title, BS_FLOW_TITLE, sign);
  bs_flow_add_text (flow, reason, BS_FLOW_KEPT, BS_FLOW_SIGN_BLANK);
  bs_flow_add_text (flow, remedy, BS_FLOW_PLAIN, BS_FLOW_SIGN_BLANK);
  bs_flow_add_space (flow);
}

static void
add_findings (BsFlow *flow, const BsResults *results, const GArray *photo_problems)
{
  guint n_photos = photo_problems != NULL ? photo_problems->len : 0;
  static const BsFlowSign signs[] = {
    [BS_SEVERITY_NOTE] = BS_FLOW_SIGN_BLANK,
    [BS_SEVERITY_CAUTION] = BS_FLOW_SIGN_CAUTION,
    [BS_SEVERITY_STOP] = BS_FLOW_SIGN_STOP,
  };

  bs_flow_add_heading (flow, _ ("Findings"));
  if (results->findings->len + n_photos == 0)
    bs_flow_add_text (flow, _ ("Nothing was found that speaks against this plan."), BS_FLOW_PLAIN,
                      BS_FLOW_SIGN_NONE);
  for (guint i = 0; i < results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (results->findings, BsFinding, i);
      g_autofree char *title = title_finding (finding, results->stack);
      g_autofree char *reason = bs_words_finding_reason (finding, results);
      g_autofree char *remedy = bs_words_finding_remedy (finding, results);

      add_finding (flow, title, signs[finding->severity], reason, remedy);
    }
  for (guint i = 0; i < n_photos; i++)
    {
      const BsPhotoProblem *problem = &g_array_index (photo_problems, BsPhotoProblem, i);
      g_autofree char *title = bs_words_photo_title (problem->board);

      add_finding (flow, title, signs[BS_SEVERITY_NOTE], problem->reason, bs_words_photo_remedy ());
    }
}

static void
add_cautions (BsFlow *flow, const BsResults *results)
{
  g_auto (GStrv) cautions = bs_words_cautions (results->stack->plan, results);

  bs_flow_add_heading (flow, _ ("Before you start"));
  for (guint i = 0; cautions[i] != NULL; i++)
    {
      bs_flow_add_text (flow, cautions[i], BS_FLOW_PLAIN, BS_FLOW_SIGN_CAUTION);
      bs_flow_add_space (flow);
    }
}

void
bs_sheet_add_lists (BsFlow *flow, const BsResults *results, const GArray *photo_problems)
{
  if (results->stack->n > 0)
    add_order (flow, results);
  add_clamps (flow, results);
  add_note (flow, results->stack->plan->note);
  add_findings (flow, results, photo_problems);
  add_cautions (flow, results);
  add_numbers (flow, results);
}

static void
add_working (BsFlow *flow, const BsWorking *working, BsUnitSystem units)
{
  g_autofree char *text = bs_words_working (working, units);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  bs_flow_add_heading (flow, working->title != NULL ? _ (working->title) : "");
  for (guint i = 0; lines[i] != NULL; i++)
    bs_flow_add_text (flow, lines[i], BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
}

void
bs_sheet_add_workings (BsFlow *flow, const BsResults *results)
{
  BsUnitSystem units = results->stack->plan->units;

  add_working (flow, &results->why_thickness, units);
  add_working (flow, &results->why_force, units);
  add_working (flow, &results->why_clamps, units);
  add_working (flow, &results->why_time, units);
  add_working (flow, &results->why_mass, units);
  add_working (flow, &results->why_moisture, units);
  add_working (flow, &results->why_width_movement, units);
  add_working (flow, &results->why_thickness_movement, units);
  add_working (flow, &results->why_cost, units);
  add_working (flow, &results->why_lifting, units);
}
