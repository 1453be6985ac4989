/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/schedule.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"

static const char *
get_label (const BsSchedule *schedule, int place)
{
  const BsLamination *lamination = schedule->stack->placed[place].lamination;

  return lamination->label != NULL ? lamination->label : lamination->id;
}

char *
bs_words_piece_name (const BsSchedule *schedule, int from, int to)
{
  const char *first = get_label (schedule, from), *last = get_label (schedule, to - 1);

  if (to - from == 1)
    return g_strdup (first);
  if (to - from == 2)
    /* Translators: the labels of two laminations. */
    return g_strdup_printf (_ ("%s and %s"), first, last);
  /* Translators: the labels of the first and the last lamination of several. */
  return g_strdup_printf (C_ ("laminations", "%s to %s"), first, last);
}

char *
bs_words_joint_name (const BsSchedule *schedule, int place)
{
  return bs_words_piece_name (schedule, place - 1, place + 1);
}

char *
bs_words_press_name (const BsSchedule *schedule, const BsStage *stage)
{
  return bs_words_piece_name (schedule, stage->bounds[0], stage->bounds[stage->n_pieces]);
}

/* "A1; A2; B1 to C2": a pack that was glued before is one piece. */
static char *
list_pieces (const BsSchedule *schedule, const BsStage *stage)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < stage->n_pieces; i++)
    {
      g_autofree char *piece
          = bs_words_piece_name (schedule, stage->bounds[i], stage->bounds[i + 1]);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : "; ", piece);
    }
  return g_string_free (text, FALSE);
}

/* Whose number it is. */
static char *
describe_clamps (const BsSchedule *schedule, const BsStage *stage)
{
  const BsStagePressing *pressing = bs_schedule_get_pressing (schedule, stage);
  unsigned long n = (unsigned long)stage->n_clamps;
  int by_rule = bs_stages_job_count_by_rule (&schedule->job, stage);

  if (!stage->is_pack && schedule->job.input.slab_clamps > 0)
    return g_strdup_printf (
        ngettext ("%d clamp, as you placed it.", "%d clamps, as you placed them.", n),
        stage->n_clamps);
  if (pressing != NULL && pressing->status == BS_LAYOUT_REACHED && pressing->n_clamps > by_rule)
    return g_strdup_printf (ngettext ("%d clamp presses every spot enough; the hand rule says %d.",
                                      "%d clamps press every spot enough; the hand rule says %d.",
                                      n),
                            stage->n_clamps, by_rule);
  if (pressing != NULL && pressing->status == BS_LAYOUT_REACHED && stage->n_clamps == by_rule)
    return g_strdup_printf (
        ngettext ("%d clamp by the hand rule, which can press every spot enough.",
                  "%d clamps by the hand rule, which can press every spot enough.", n),
        stage->n_clamps);
  if (pressing != NULL && pressing->status == BS_LAYOUT_SHORT)
    return g_strdup_printf (
        ngettext ("%d clamp by the hand rule; yours cannot press every spot enough.",
                  "%d clamps by the hand rule; yours cannot press every spot enough.", n),
        stage->n_clamps);
  if (stage->n_clamps != by_rule)
    return g_strdup_printf (ngettext ("%d clamp, as for the other packs; the hand rule says %d.",
                                      "%d clamps, as for the other packs; the hand rule says %d.",
                                      n),
                            stage->n_clamps, by_rule);
  return g_strdup_printf (ngettext ("%d clamp by the hand rule.", "%d clamps by the hand rule.", n),
                          stage->n_clamps);
}

static char *
describe_mass (const BsSchedule *schedule, const BsStage *stage)
{
  g_autofree char *mass
      = bs_units_format (stage->mass_kg, BS_QUANTITY_MASS, schedule->stack->plan->units);

  if (isnan (stage->mass_kg))
    return g_strdup (_ ("How much it weighs is not known."));
  return g_strdup_printf (_ ("%s to lift."), mass);
}

/* The other presses of its round, by their numbers. */
static char *
list_company (const BsStagesPlan *presses, guint number, guint *n_others, int *n_clamps)
{
  const BsStage *stage = &g_array_index (presses->stages, BsStage, number);
  GString *text = g_string_new (NULL);

  *n_others = 0;
  *n_clamps = stage->n_clamps;
  for (guint i = 0; i < presses->stages->len; i++)
    {
      const BsStage *other = &g_array_index (presses->stages, BsStage, i);

      if (i == number || other->round != stage->round)
        continue;
      g_string_append_printf (text, "%s%u", *n_others > 0 ? ", " : "", i + 1);
      (*n_others)++;
      *n_clamps += other->n_clamps;
    }
  return g_string_free (text, FALSE);
}

static char *
describe_company (const BsSchedule *schedule, const BsStagesPlan *presses, guint number)
{
  guint n_others;
  int n_clamps;
  g_autofree char *others = list_company (presses, number, &n_others, &n_clamps);

  if (n_others == 0)
    return NULL;
  /* Translators: numbers of presses: "2, 3"; clamps that they use together; clamps that there are.
   */
  return g_strdup_printf (ngettext ("In the clamps together with press %s: %d of %d clamps.",
                                    "In the clamps together with presses %s: %d of %d clamps.",
                                    n_others),
                          others, n_clamps, schedule->job.input.pack_clamps);
}

char *
bs_words_press_title (const BsSchedule *schedule, const BsStagesPlan *presses, guint number)
{
  const BsStage *stage = &g_array_index (presses->stages, BsStage, number);
  g_autofree char *name = bs_words_press_name (schedule, stage);

  if (presses->n_rounds == 1)
    /* Translators: number of the press, and its laminations: "A1 to B2". */
    return g_strdup_printf (_ ("Press %u: %s"), number + 1, name);
  /* Translators: number of the press, number of the round, and its laminations: "A1 to B2". */
  return g_strdup_printf (_ ("Press %u, round %d: %s"), number + 1, stage->round + 1, name);
}

char *
bs_words_press (const BsSchedule *schedule, const BsStagesPlan *presses, guint number)
{
  const BsStage *stage = &g_array_index (presses->stages, BsStage, number);
  g_autofree char *pieces = list_pieces (schedule, stage);
  g_autofree char *clamps = describe_clamps (schedule, stage);
  g_autofree char *mass = describe_mass (schedule, stage);
  g_autofree char *company = describe_company (schedule, presses, number);
  /* Translators: how many pieces, and their labels. */
  g_autofree char *joined = g_strdup_printf (
      ngettext ("%d piece: %s.", "%d pieces: %s.", (unsigned long)stage->n_pieces), stage->n_pieces,
      pieces);

  return g_strjoin (" ", joined, clamps, mass, company, NULL);
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

const char *
bs_words_remedies_heading (const BsSchedule *schedule)
{
  if (schedule->remedies->len == 0)
    return _ ("No single change would make it possible.");
  if (schedule->remedies->len == 1)
    return _ ("This would make it possible:");
  return _ ("Any one of these would make it possible:");
}

char *
bs_words_presses (const BsStagesPlan *presses, BsUnitSystem units)
{
  g_autofree char *elapsed = bs_units_format (presses->elapsed_s, BS_QUANTITY_TIME, units);
  g_autofree char *count = g_strdup_printf (
      ngettext ("%u press", "%u presses", presses->stages->len), presses->stages->len);
  g_autofree char *rounds = g_strdup_printf (
      ngettext ("%d round", "%d rounds", (unsigned long)presses->n_rounds), presses->n_rounds);

  /* Translators: "5 presses", "2 rounds", and a time. */
  return g_strdup_printf (_ ("%s in %s; %s from the first glue to the last clamp off"), count,
                          rounds, elapsed);
}

static char *
describe_rounds (int more)
{
  if (more > 0)
    return g_strdup_printf (ngettext ("%d round more.", "%d rounds more.", (unsigned long)more),
                            more);
  if (more < 0)
    return g_strdup_printf (ngettext ("%d round fewer.", "%d rounds fewer.", (unsigned long)-more),
                            -more);
  return g_strdup (_ ("As many rounds."));
}

/* Differences of less than a second are none. */
static char *
describe_sooner (double later_s, BsUnitSystem units)
{
  g_autofree char *time = bs_units_format (fabs (later_s), BS_QUANTITY_TIME, units);

  if (fabs (later_s) < 1.0)
    return g_strdup (_ ("Done at the same time."));
  return g_strdup_printf (later_s < 0.0 ? _ ("Done %s sooner.") : _ ("Done %s later."), time);
}

static char *
describe_evenness (const BsStagesPlan *self, BsUnitSystem units)
{
  g_autofree char *imbalance = bs_units_format (self->imbalance, BS_QUANTITY_LENGTH, units);

  if (self->imbalance < 0.05)
    return g_strdup (_ ("All pieces of its last press are equally wide."));
  return g_strdup_printf (_ ("In its last press the widest piece is %s wider than the narrowest."),
                          imbalance);
}

char *
bs_words_presses_difference (const BsStagesPlan *self, const BsStagesPlan *other,
                             BsUnitSystem units)
{
  g_autofree char *rounds = describe_rounds (self->n_rounds - other->n_rounds);
  g_autofree char *sooner = describe_sooner (self->elapsed_s - other->elapsed_s, units);
  g_autofree char *evenness = describe_evenness (self, units);

  return g_strjoin (" ", rounds, sooner, evenness, NULL);
}

static gboolean
is_as_short (const BsStagesPlan *own, const BsStagesPlan *shortest)
{
  return shortest != NULL && own->n_rounds == shortest->n_rounds
         && fabs (own->elapsed_s - shortest->elapsed_s) < 1.0;
}

char *
bs_words_schedule (const BsSchedule *schedule)
{
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);

  if (!schedule->has_job)
    return g_strdup (_ ("A schedule needs at least two laminations with a size in the slab."));
  if (presses == NULL)
    /* Translators: a sentence that says what stands in the way. */
    return g_strdup_printf (_ ("This slab cannot be glued as it is. %s"),
                            bs_words_stage_limit (schedule->stages->limit));
  if (!bs_stages_plan_is_possible (presses))
    return g_strdup (_ ("With your packs a press breaks a limit; it is marked below."));

  g_autofree char *proof = bs_words_proof (schedule);
  if (schedule->own != NULL)
    return g_strjoin (" ", _ ("With the packs that you chose."),
                      is_as_short (presses, schedule->stages->shortest) ? proof : NULL, NULL);
  if (presses->stages->len == 1)
    return g_steal_pointer (&proof);
  return g_strjoin (" ", _ ("Not in one press, but in packs it can be glued."), proof, NULL);
}

char *
bs_words_proof (const BsSchedule *schedule)
{
  return g_strdup (schedule->stages->is_proved
                       ? _ ("Nothing shorter exists: the fewest rounds, and among those the least "
                            "time.")
                       : _ ("The best that was found; not all ways were tried."));
}
