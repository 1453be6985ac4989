/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/schedule.h"

#include <glib/gi18n-lib.h>

#include "core/units.h"

static const char *
get_label (const BsForecast *forecast, int place)
{
  const BsLamination *lamination = forecast->stack->placed[place].lamination;

  return lamination->label != NULL ? lamination->label : lamination->id;
}

static char *
name_range (const BsForecast *forecast, int from, int to)
{
  const char *first = get_label (forecast, from), *last = get_label (forecast, to - 1);

  if (to - from == 1)
    return g_strdup (first);
  if (to - from == 2)
    /* Translators: the labels of two laminations. */
    return g_strdup_printf (_ ("%s and %s"), first, last);
  /* Translators: the labels of the first and the last lamination of several. */
  return g_strdup_printf (C_ ("laminations", "%s to %s"), first, last);
}

char *
bs_words_press_name (const BsForecast *forecast, const BsStage *stage)
{
  return name_range (forecast, stage->bounds[0], stage->bounds[stage->n_pieces]);
}

/* "A1; A2; B1 to C2": a pack that was glued before is one piece. */
static char *
list_pieces (const BsForecast *forecast, const BsStage *stage)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < stage->n_pieces; i++)
    {
      g_autofree char *piece = name_range (forecast, stage->bounds[i], stage->bounds[i + 1]);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : "; ", piece);
    }
  return g_string_free (text, FALSE);
}

static char *
describe_clamps (const BsStage *stage)
{
  return g_strdup_printf (ngettext ("%d clamp to cover the length.",
                                    "%d clamps to cover the length.",
                                    (unsigned long)stage->n_clamps),
                          stage->n_clamps);
}

static char *
describe_times (const BsForecast *forecast, const BsStage *stage)
{
  BsUnitSystem units = forecast->stack->plan->units;
  const BsStagesInput *input = &forecast->job.input;
  g_autofree char *assembly = bs_units_format (stage->times.total_s, BS_QUANTITY_TIME, units);
  g_autofree char *limit = bs_units_format (input->total_s, BS_QUANTITY_TIME, units);
  g_autofree char *open = bs_units_format (stage->times.open_s, BS_QUANTITY_TIME, units);
  g_autofree char *open_limit = bs_units_format (input->open_s, BS_QUANTITY_TIME, units);
  g_autofree char *press = bs_units_format (input->press_s, BS_QUANTITY_TIME, units);

  /* Translators: all five are times: "6 min 20 s". */
  return g_strdup_printf (_ ("Assembly %s of the %s that the glue allows; a joint open for %s of "
                             "%s; then %s in the clamps."),
                          assembly, limit, open, open_limit, press);
}

char *
bs_words_press (const BsForecast *forecast, const BsStage *stage)
{
  g_autofree char *pieces = list_pieces (forecast, stage);
  g_autofree char *clamps = describe_clamps (stage);
  g_autofree char *times = describe_times (forecast, stage);
  /* Translators: how many pieces, and their labels. */
  g_autofree char *joined = g_strdup_printf (
      ngettext ("%d piece: %s.", "%d pieces: %s.", (unsigned long)stage->n_pieces), stage->n_pieces,
      pieces);

  return g_strjoin (" ", joined, clamps, times, bs_words_stage_limit (stage->limit), NULL);
}

const char *
bs_words_stage_limit (BsStageLimit limit)
{
  switch (limit)
    {
    case BS_STAGE_LIMIT_NONE:
      return "";
    case BS_STAGE_LIMIT_OPEN:
      return _ ("A joint is open for too long before its pieces meet.");
    case BS_STAGE_LIMIT_CLOSED:
      return _ ("A joint waits too long for pressure.");
    case BS_STAGE_LIMIT_TOTAL:
      return _ ("It takes longer than the glue allows.");
    case BS_STAGE_LIMIT_CLAMPS:
      return _ ("There are too few clamps.");
    case BS_STAGE_LIMIT_OPENING:
      return _ ("No clamp opens wide enough.");
    case BS_STAGE_LIMIT_PLANER:
      return _ ("It is wider than the planer.");
    case BS_STAGE_LIMIT_WEIGHT:
      return _ ("It is heavier than you lift.");
    case BS_STAGE_LIMIT_ROUNDS:
      return _ ("It would take more rounds than are looked at.");
    default:
      g_return_val_if_reached ("");
    }
}

char *
bs_words_stages_remedy (const BsStagesRemedy *remedy, BsUnitSystem units)
{
  int count = (int)remedy->value;
  g_autofree char *length = bs_units_format (remedy->value, BS_QUANTITY_LENGTH, units);
  g_autofree char *temperature = bs_units_format (remedy->value, BS_QUANTITY_TEMPERATURE, units);

  switch (remedy->kind)
    {
    case BS_STAGES_REMEDY_SMALLER_PACKS:
      return g_strdup_printf (ngettext ("Smaller packs: at most %d piece in one press.",
                                        "Smaller packs: at most %d pieces in one press.",
                                        (unsigned long)count),
                              count);
    case BS_STAGES_REMEDY_SLOWER_ADHESIVE:
      return g_strdup_printf (_ ("A slower adhesive, with %.2f times the open and the total time."),
                              remedy->value);
    case BS_STAGES_REMEDY_MORE_PEOPLE:
      return g_strdup_printf (
          ngettext ("%d person in all.", "%d people in all.", (unsigned long)count), count);
    case BS_STAGES_REMEDY_COOLER_SHOP:
      return g_strdup_printf (_ ("A cooler shop, at %s."), temperature);
    case BS_STAGES_REMEDY_MORE_CLAMPS:
      return g_strdup_printf (ngettext ("%d clamp in all, as long as your longest.",
                                        "%d clamps in all, as long as your longest.",
                                        (unsigned long)count),
                              count);
    case BS_STAGES_REMEDY_LONGER_CLAMPS:
      return g_strdup_printf (_ ("As many clamps as now, but with a reach of %s."), length);
    case BS_STAGES_REMEDY_WIDER_PLANER:
      return g_strdup_printf (_ ("A planer of %s, or packs flattened by other means."), length);
    default:
      g_return_val_if_reached (g_strdup (""));
    }
}

/* The person's packs, and what other ones would do. */
static char *
describe_own (const BsForecast *forecast)
{
  const BsStagesPlan *other = forecast->stages->shortest;

  if (other == NULL)
    return g_strdup (_ ("With the packs that you chose."));
  if (forecast->stages->is_proved)
    return g_strdup_printf (ngettext ("With the packs that you chose. With other packs, or none, "
                                      "%d round would do: proved to be the fewest.",
                                      "With the packs that you chose. With other packs, or none, "
                                      "%d rounds would do: proved to be the fewest.",
                                      (unsigned long)other->n_rounds),
                            other->n_rounds);
  return g_strdup_printf (ngettext ("With the packs that you chose. With other packs, or none, "
                                    "%d round would do; not proved to be the fewest.",
                                    "With the packs that you chose. With other packs, or none, "
                                    "%d rounds would do; not proved to be the fewest.",
                                    (unsigned long)other->n_rounds),
                          other->n_rounds);
}

char *
bs_words_schedule (const BsForecast *forecast)
{
  const BsStagesPlan *schedule = bs_forecast_get_schedule (forecast);

  if (!forecast->has_job)
    return g_strdup (_ ("A schedule needs at least two laminations with a size in the slab."));
  if (schedule == NULL)
    /* Translators: a sentence that says what stands in the way. */
    return g_strdup_printf (_ ("This slab cannot be glued as it is. %s"),
                            bs_words_stage_limit (forecast->stages->limit));
  if (!bs_stages_plan_is_possible (schedule))
    return g_strdup (_ ("With your packs a press breaks a limit; it is marked below."));
  if (forecast->own != NULL)
    return describe_own (forecast);
  return g_strdup (forecast->stages->is_proved
                       ? _ ("The fewest rounds, and among those the least time: proved.")
                       : _ ("The best that was found; not proved to be the fewest."));
}
