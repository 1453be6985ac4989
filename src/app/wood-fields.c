/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-fields.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "core/money.h"
#include "core/text.h"
#include "core/units.h"

#define FIELD(kind, label, hint, type, member, ...)                                                \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (type, member), __VA_ARGS__                                 \
  }

/* Money that may be not known: an empty field. */

static gboolean
take_price (double minor, double most, double *place, GError **error)
{
  if (minor >= 0.0 && minor <= most)
    {
      *place = minor;
      return TRUE;
    }
  g_set_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX,
               _ ("Expected is a price that is not negative and not far too large."));
  return FALSE;
}

static char *
format_sum (double minor, const BsPlan *plan)
{
  return isnan (minor) ? g_strdup ("") : bs_money_format (minor, plan->currency);
}

static gboolean
parse_sum (const char *text, const BsPlan *plan, double most, double *place, GError **error)
{
  double minor = NAN;

  if (*text == '\0')
    {
      *place = NAN;
      return TRUE;
    }
  return bs_money_parse (text, plan->currency, &minor, error)
         && take_price (minor, most, place, error);
}

static char *
format_most_cost (gconstpointer record, const BsPlan *plan)
{
  return format_sum (((const BsPlan *)record)->slab.wood_limits.max_cost_minor, plan);
}

static gboolean
parse_most_cost (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  return parse_sum (text, plan, bs_limits.price.most,
                    &((BsPlan *)record)->slab.wood_limits.max_cost_minor, error);
}

static char *
format_glue_price (gconstpointer record, const BsPlan *plan)
{
  return format_sum (((const BsAdhesive *)record)->price_minor_per_kg, plan);
}

static gboolean
parse_glue_price (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  return parse_sum (text, plan, bs_limits.price_rate.most,
                    &((BsAdhesive *)record)->price_minor_per_kg, error);
}

static char *
format_wood_price (gconstpointer record, const BsPlan *plan)
{
  const double minor = ((const BsWood *)record)->price_minor_per_m3;

  return isnan (minor) ? g_strdup ("") : bs_money_format_rate (minor, plan->currency, plan->units);
}

static gboolean
parse_wood_price (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  double *place = &((BsWood *)record)->price_minor_per_m3;
  double minor = NAN;

  if (*text == '\0')
    {
      *place = NAN;
      return TRUE;
    }
  return bs_money_parse_rate (text, plan->currency, plan->units, &minor, error)
         && take_price (minor, bs_limits.price_rate.most, place, error);
}

/* A wood without a name could not be told from the others. */
static char *
format_wood_name (gconstpointer record, const BsPlan *plan)
{
  return g_strdup (((const BsWood *)record)->name);
}

static gboolean
parse_wood_name (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  if (*text != '\0')
    bs_text_set (&((BsWood *)record)->name, text);
  else
    g_set_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX, _ ("A name is expected."));
  return *text != '\0';
}

static char *
format_currency (gconstpointer record, const BsPlan *plan)
{
  return g_strdup (((const BsPlan *)record)->currency);
}

static gboolean
parse_currency (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  g_autofree char *code = g_ascii_strup (text, -1);
  gboolean is_code = strlen (code) == 3;

  for (guint i = 0; is_code && i < 3; i++)
    is_code = g_ascii_isupper (code[i]);
  if (is_code)
    bs_text_set (&((BsPlan *)record)->currency, code);
  else
    g_set_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX,
                 _ ("Expected is a currency of three letters, such as EUR or USD."));
  return is_code;
}

#define TYPED(label, hint, type, member, chars_of, format_of, parse_of)                            \
  FIELD (BS_FIELD_OWN, label, hint, type, member, .chars = (chars_of), .format = (format_of),      \
         .parse = (parse_of), .is_figure = TRUE)

const BsField bs_wood_price_field
    = TYPED (N_ ("Price"),
             N_ ("Rough, as you buy it: for a cubic metre or, typed so, a board foot: 4.50/bf"),
             BsWood, price_minor_per_m3, 14, format_wood_price, parse_wood_price);

const BsField bs_glue_price_field
    = TYPED (N_ ("Price of a kilogram of glue"), N_ ("Empty: not known"), BsAdhesive,
             price_minor_per_kg, 10, format_glue_price, parse_glue_price);

const BsField bs_currency_field
    = TYPED (N_ ("Currency"), N_ ("Of all prices, by its three letters; amounts stay as they are"),
             BsPlan, currency, 6, format_currency, parse_currency);

const BsField bs_wood_wish_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Side hardness, from"),
         N_ ("Softer dents and wants flattening often. Empty: not asked"), BsPlan,
         slab.hardness_low_n, &bs_limits.hardness, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Side hardness, to"),
         N_ ("Harder is heavy to mill and to plane, and dents the work. Empty: not asked"), BsPlan,
         slab.hardness_high_n, &bs_limits.hardness, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("The slab weighs, at most"), N_ ("Empty: not asked"), BsPlan,
         slab.wood_limits.max_kg, &bs_limits.slab_mass, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Its width moves, at most"), N_ ("Over the year. Empty: not asked"),
         BsPlan, slab.wood_limits.max_movement, &bs_limits.slab_movement, TRUE),
  TYPED (N_ ("Its lumber costs, at most"), N_ ("Empty: not asked"), BsPlan,
         slab.wood_limits.max_cost_minor, 14, format_most_cost, parse_most_cost),
  FIELD (BS_FIELD_NUMBER, N_ ("Lumber as thick as"), N_ ("Rough. Empty: not asked"), BsPlan,
         slab.wood_limits.rough_thickness, &bs_limits.board_thickness, TRUE),
  FIELD (BS_FIELD_SWITCH, N_ ("May be hard to glue"),
         N_ ("Woods that bond only with chosen adhesives, on freshly planed faces"), BsPlan,
         slab.wood_limits.may_bond_difficult),
};
const guint bs_n_wood_wish_fields = G_N_ELEMENTS (bs_wood_wish_fields);

static const char *const fixed_lines[] = {
  N_ ("Along its middle"),
  N_ ("Along its front"),
  N_ ("Along its back"),
  NULL,
};

const BsField bs_wood_fixing_fields[] = {
  FIELD (BS_FIELD_CHOICE, N_ ("Held"), N_ ("Where it cannot move; elsewhere slots let it"), BsPlan,
         slab.fixing.line, .choices = fixed_lines),
  FIELD (BS_FIELD_NUMBER, N_ ("Screws"), N_ ("Their diameter"), BsPlan, slab.fixing.screw,
         &bs_limits.slot_screw),
  FIELD (BS_FIELD_NUMBER, N_ ("Play"), N_ ("Left at each end of a slot"), BsPlan, slab.fixing.play,
         &bs_limits.slot_play),
};
const guint bs_n_wood_fixing_fields = G_N_ELEMENTS (bs_wood_fixing_fields);

static const char *const kinds[] = { N_ ("Softwood"), N_ ("Hardwood"), NULL };

static const char *const bonds[] = {
  NC_ ("gluing a wood", "not known"),
  NC_ ("gluing a wood", "bonds easily"),
  NC_ ("gluing a wood", "bonds well"),
  NC_ ("gluing a wood", "bonds satisfactorily"),
  NC_ ("gluing a wood", "bonds with difficulty"),
  NULL,
};

const BsField bs_wood_fields[] = {
  FIELD (BS_FIELD_OWN, N_ ("Name"), NULL, BsWood, name, .chars = 18, .format = format_wood_name,
         .parse = parse_wood_name),
  TYPED (N_ ("Price"),
         N_ ("Rough, as you buy it: for a cubic metre or, typed so, a board foot: "
             "4.50/bf"),
         BsWood, price_minor_per_m3, 14, format_wood_price, parse_wood_price),
  FIELD (BS_FIELD_CHOICE, N_ ("Kind"), NULL, BsWood, is_hardwood, .choices = kinds),
  FIELD (BS_FIELD_NUMBER, N_ ("Specific gravity"), N_ ("Oven-dry mass by the volume at 12 %"),
         BsWood, sg_12, &bs_limits.sg, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Side hardness"), NULL, BsWood, side_hardness_n, &bs_limits.hardness,
         TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Stiffness"), N_ ("Modulus of elasticity along its grain"), BsWood,
         moe_mpa, &bs_limits.moe, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Strength across the grain"), N_ ("At the proportional limit"),
         BsWood, comp_perp_mpa, &bs_limits.comp_perp, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Shrinkage, radial"), N_ ("Green to oven-dry"), BsWood,
         shrink_radial_pct, &bs_limits.shrinkage, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Shrinkage, tangential"), N_ ("Green to oven-dry"), BsWood,
         shrink_tangential_pct, &bs_limits.shrinkage, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Movement, radial"), N_ ("For each % of moisture, from 6 to 14 %"),
         BsWood, coef_radial, &bs_limits.movement, TRUE, .chars = 8),
  FIELD (BS_FIELD_NUMBER, N_ ("Movement, tangential"),
         N_ ("For each % of moisture, from 6 to 14 %"), BsWood, coef_tangential,
         &bs_limits.movement, TRUE, .chars = 8),
  FIELD (BS_FIELD_CHOICE, N_ ("Gluing"), NULL, BsWood, bond, .choices = bonds, .first_choice = -1,
         .choices_context = "gluing a wood"),
  FIELD (BS_FIELD_TEXT, N_ ("Source"), N_ ("Where these figures come from"), BsWood, source),
};
const guint bs_n_wood_fields = G_N_ELEMENTS (bs_wood_fields);
