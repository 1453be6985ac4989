/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "plan/format.h"
#include "plan/json-text.h"
#include "words/words.h"

const char *const bs_severity_names[] = { "note", "caution", "stop" };

/* How a kind is called in reports, and its values. */
typedef struct
{
  const char *id;
  const char *values[BS_FINDING_MAX_VALUES];
} KindNames;

static const KindNames kind_names[BS_N_FINDING_KINDS] = {
  [BS_FINDING_TOO_FEW_LAMINATIONS] = { "too-few-laminations", { "laminations" } },
  [BS_FINDING_THIN] = { "thin", { "thickness_mm", "wanted_mm" } },
  [BS_FINDING_NARROW] = { "narrow", { "width_mm", "wanted_mm" } },
  [BS_FINDING_SHORT] = { "short", { "length_mm", "wanted_mm" } },
  [BS_FINDING_RUN_OUT] = { "run-out", { NULL } },
  [BS_FINDING_DEFECT_SHOWS] = { "defect-shows", { "defect_severity", "x_from_mm", "x_to_mm" } },
  [BS_FINDING_HEARTS_ALIKE] = { "hearts-alike", { NULL } },
  [BS_FINDING_MOISTURE_APART] = { "moisture-apart", { "difference_pct", "limit_pct" } },
  [BS_FINDING_MOISTURE_UNFIT]
  = { "moisture-unfit", { "moisture_pct", "emc_low_pct", "emc_high_pct" } },
  [BS_FINDING_CLAMPS_MISSING] = { "clamps-missing", { "needed", "fitting" } },
  [BS_FINDING_CLAMPS_WEAK] = { "clamps-weak", { "force_needed_N", "force_fitting_N" } },
  [BS_FINDING_CLAMP_REACH]
  = { "clamp-reach", { "reach_needed_mm", "longest_reach_mm", "too_short" } },
  [BS_FINDING_CRUSHING] = { "crushing", { "stress_MPa", "strength_MPa" } },
  [BS_FINDING_CLAMPS_PLACED] = { "clamps-placed", { "placed", "owned" } },
  [BS_FINDING_CLAMP_FORCED] = { "clamp-forced", { "force_N", "max_force_N" } },
  [BS_FINDING_OPEN_TIME] = { "open-time", { "needed_s", "limit_s" } },
  [BS_FINDING_COLD] = { "cold", { "temperature_C", "least_C" } },
  [BS_FINDING_HEAVY] = { "heavy", { "mass_kg", "max_lift_kg" } },
  [BS_FINDING_PLANER_NARROW] = { "planer-narrow", { "slab_width_mm", "planer_width_mm" } },
  [BS_FINDING_WOOD_UNKNOWN] = { "wood-unknown", { NULL } },
};

static JsonObject *
report_finding (const BsFinding *finding, const BsResults *results)
{
  const KindNames *names = &kind_names[finding->kind];
  g_autofree char *reason = bs_words_finding_reason (finding, results);
  g_autofree char *remedy = bs_words_finding_remedy (finding, results);
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "id", names->id);
  bs_json_set_text (object, "severity", bs_severity_names[finding->severity]);
  bs_json_set_text (object, "lamination", bs_report_id_at (results, finding->place));
  bs_json_set_text (object, "neighbour", bs_report_id_at (results, finding->neighbour));
  if (finding->kind == BS_FINDING_DEFECT_SHOWS)
    bs_json_set_text (object, "defect", bs_defect_names[finding->detail]);
  for (guint i = 0; i < BS_FINDING_MAX_VALUES && names->values[i] != NULL; i++)
    bs_json_set_number (object, names->values[i], finding->values[i]);
  bs_json_set_text (object, "title", bs_words_finding_title (finding));
  bs_json_set_text (object, "reason", reason);
  bs_json_set_text (object, "remedy", remedy);
  return object;
}

static JsonObject *
report_photo (const BsPhotoProblem *problem)
{
  g_autofree char *title = bs_words_photo_title (problem->board);
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "id", "photo-missing");
  bs_json_set_text (object, "severity", bs_severity_names[BS_SEVERITY_NOTE]);
  bs_json_set_text (object, "board", problem->board->id);
  bs_json_set_text (object, "title", title);
  bs_json_set_text (object, "reason", problem->reason);
  bs_json_set_text (object, "remedy", bs_words_photo_remedy ());
  return object;
}

JsonArray *
bs_report_findings (const BsResults *results, const GArray *photo_problems)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < results->findings->len; i++)
    json_array_add_object_element (
        array, report_finding (&g_array_index (results->findings, BsFinding, i), results));
  for (guint i = 0; photo_problems != NULL && i < photo_problems->len; i++)
    json_array_add_object_element (
        array, report_photo (&g_array_index (photo_problems, BsPhotoProblem, i)));
  return array;
}
