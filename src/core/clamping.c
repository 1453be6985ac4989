/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamping.h"

#include "core/units.h"

#include <math.h>

/* Recommended pressure by density. Parts of the adhesive's own range that give, for 0.7 to 1.7 MPa,
 * the bands 0.7 to 1.0, 1.0 to 1.4 and 1.2 to 1.7 MPa of light, medium and dense woods. Source:
 * Selbo 1975, Adhesive bonding of wood, USDA Tech. Bull. 1512, and extension practice; from memory.
 * The limits of density (specific gravity at 12 %) were chosen here. */
typedef struct
{
  double sg_below;
  double low, high;
} DensityBand;

static const DensityBand bands[] = {
  { 0.45, 0.0, 0.3 },
  { 0.60, 0.3, 0.7 },
  { INFINITY, 0.5, 1.0 },
};

/* Never press a wood with more than this part of its strength across the grain: the best joints of
 * Rabiej and Behm 1992, Wood and Fiber Science 24(3):260-273, were made at 0.5 with PVA. */
#define MOST_OF_STRENGTH 0.5

static double
interpolate (const BsAdhesive *adhesive, double part)
{
  return adhesive->min_pressure_mpa
         + part * (adhesive->max_pressure_mpa - adhesive->min_pressure_mpa);
}

BsPressureRange
bs_clamping_pressure (const BsStack *stack)
{
  const BsAdhesive *adhesive = &stack->plan->adhesive;
  double densest = NAN;
  double weakest = NAN;

  /* fmax and fmin pass over NAN. */
  for (guint i = 0; i < stack->n; i++)
    if (stack->placed[i].wood != NULL)
      {
        densest = fmax (densest, stack->placed[i].wood->sg_12);
        weakest = fmin (weakest, stack->placed[i].wood->comp_perp_mpa);
      }
  if (isnan (densest))
    return (BsPressureRange){ NAN, NAN };

  const DensityBand *band = bands;
  while (densest >= band->sg_below)
    band++;
  double most = MOST_OF_STRENGTH * weakest;
  return (BsPressureRange){
    .low = fmin (interpolate (adhesive, band->low), most),
    .high = fmin (interpolate (adhesive, band->high), most),
  };
}

double
bs_clamping_outer_strength (const BsStack *stack)
{
  if (stack->n == 0)
    return NAN;
  const BsWood *first = stack->placed[0].wood;
  const BsWood *last = stack->placed[stack->n - 1].wood;
  if (first == NULL || last == NULL || isnan (first->comp_perp_mpa) || isnan (last->comp_perp_mpa))
    return NAN;
  return fmin (first->comp_perp_mpa, last->comp_perp_mpa);
}

static int
count_reaching (const GPtrArray *clamps, double reach)
{
  int count = 0;

  for (guint i = 0; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      if (kind->reach >= reach)
        count += kind->count;
    }
  return count;
}

static gboolean
lines_both_faces (const BsCaulKind *caul, double length)
{
  return caul->count >= 2.0 * ceil (length / caul->length);
}

const BsCaulKind *
bs_clamping_caul (const BsStack *stack)
{
  const BsShop *shop = &stack->plan->shop;
  int bare = count_reaching (shop->clamps, stack->width);
  const BsCaulKind *best = NULL;

  for (guint i = 0; i < shop->cauls->len; i++)
    {
      const BsCaulKind *caul = g_ptr_array_index (shop->cauls, i);
      if (!lines_both_faces (caul, stack->length)
          || count_reaching (shop->clamps, stack->width + 2.0 * caul->thickness) < bare)
        continue;
      if (best == NULL || caul->thickness > best->thickness)
        best = caul;
    }
  return best;
}

static int
compare_strongest_first (gconstpointer a, gconstpointer b)
{
  const BsClampKind *first = *(const BsClampKind *const *)a;
  const BsClampKind *second = *(const BsClampKind *const *)b;
  return (first->max_force_n < second->max_force_n) - (first->max_force_n > second->max_force_n);
}

/* The kinds of which there are any and that reach, strongest first. */
static GPtrArray *
list_clamps (const BsShop *shop, double reach)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < shop->clamps->len; i++)
    {
      BsClampKind *kind = g_ptr_array_index (shop->clamps, i);
      if (kind->count > 0 && kind->reach >= reach)
        g_ptr_array_add (list, kind);
    }
  g_ptr_array_sort (list, compare_strongest_first);
  return list;
}

/* How many clamps come to the force, strongest first; when all together do not, as many more of the
 * strongest kind as would. */
static int
count_by_force (const GPtrArray *clamps, double force)
{
  int count = 0;

  for (guint i = 0; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      double wanted = ceil (force / kind->max_force_n);
      if (wanted <= kind->count)
        return count + (int)wanted;
      count += kind->count;
      force -= kind->count * kind->max_force_n;
    }
  const BsClampKind *strongest = g_ptr_array_index (clamps, 0);
  return count + (int)ceil (force / strongest->max_force_n);
}

/* Force spreads from a head, through the caul, within 45 degrees to each side, so that at depth d
 * it covers its width and 2 d. The first glue line is the weak one. Textbook rule of woodworking,
 * from memory. */
static double
cover_at_first_line (const BsStack *stack, const BsClampRule *rule)
{
  double outer = fmin (stack->placed[0].thickness, stack->placed[stack->n - 1].thickness);
  return rule->head_width + 2.0 * (outer + rule->caul_thickness);
}

/* Clamps to go with: as many as are needed, or all that fit when those cover the length but are too
 * few for the force. Equally far apart, half of that from each end, to the millimetre or the
 * sixteenth of an inch: a tape is read no finer. */
static void
space_evenly (const BsStack *stack, BsClampRule *rule)
{
  int least = MAX (rule->n_by_spacing, 2);
  int used = rule->n_fitting >= least ? MIN (rule->n, rule->n_fitting) : least;
  double step = stack->plan->units == BS_UNIT_SYSTEM_INCH ? BS_MM_PER_INCH / 16.0 : 1.0;

  for (int i = 0; i < used; i++)
    {
      double x = step * floor ((i + 0.5) * stack->length / used / step + 0.5);
      g_array_append_val (rule->positions, x);
    }
}

/* The greatest stress on the outer laminations, all clamps tightened to the same part of what they
 * can. Under a caul the force has spread by its thickness. */
static double
find_head_stress (const BsStack *stack, const BsClampRule *rule, const GPtrArray *clamps,
                  const BsCaulKind *caul)
{
  double greatest = 0.0;
  double sum = 0.0;
  int left = (int)rule->positions->len;

  for (guint i = 0; i < clamps->len && left > 0; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      int count = i + 1 < clamps->len ? MIN (kind->count, left) : left;
      double length = kind->head_width + 2.0 * rule->caul_thickness;
      double height = fmin (stack->height, caul != NULL ? caul->height : kind->head_height);
      greatest = fmax (greatest, kind->max_force_n / (length * height));
      sum += count * kind->max_force_n;
      left -= count;
    }
  return greatest * fmin (1.0, rule->force_n / sum);
}

static void
count_clamps (const BsStack *stack, const BsCaulKind *caul, BsClampRule *rule)
{
  const BsShop *shop = &stack->plan->shop;
  g_autoptr (GPtrArray) clamps = list_clamps (shop, rule->reach_needed);

  for (guint i = 0; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      rule->n_fitting += kind->count;
      rule->force_fitting_n += kind->count * kind->max_force_n;
    }
  if (clamps->len == 0) /* count as if those owned were long enough */
    {
      g_ptr_array_unref (clamps);
      clamps = list_clamps (shop, 0.0);
    }
  if (clamps->len == 0)
    return;

  rule->head_width = INFINITY;
  for (guint i = 0; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      rule->head_width = fmin (rule->head_width, kind->head_width);
    }
  rule->spacing = cover_at_first_line (stack, rule);
  rule->n_by_spacing = (int)ceil (stack->length / rule->spacing);
  if (!isnan (rule->force_n))
    rule->n_by_force = count_by_force (clamps, rule->force_n);
  rule->n = MAX (MAX (rule->n_by_force, rule->n_by_spacing), 2);
  space_evenly (stack, rule);
  rule->head_stress_mpa = find_head_stress (stack, rule, clamps, caul);
}

void
bs_clamping_rule (const BsStack *stack, BsClampRule *rule)
{
  *rule = (BsClampRule){
    .pressure_mpa = NAN,
    .force_n = NAN,
    .spacing = NAN,
    .n = 2,
    .reach_needed = stack->width,
    .head_width = NAN,
    .reached_mpa = NAN,
    .head_stress_mpa = NAN,
    .head_strength_mpa = bs_clamping_outer_strength (stack),
    .positions = rule->positions,
  };
  for (guint i = 0; i + 1 < stack->n; i++)
    rule->area = fmax (rule->area, bs_stack_glue_area (stack, i));
  if (stack->n < 2)
    return;

  const BsCaulKind *caul = bs_clamping_caul (stack);
  rule->caul_thickness = caul != NULL ? caul->thickness : 0.0;
  rule->reach_needed += 2.0 * rule->caul_thickness;
  rule->pressure_mpa = bs_clamping_pressure (stack).low;
  rule->force_n = rule->pressure_mpa * rule->area;
  count_clamps (stack, caul, rule);
  if (rule->area > 0.0)
    rule->reached_mpa = rule->force_fitting_n / rule->area;
}
