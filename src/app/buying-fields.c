/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/buying-fields.h"

#include <glib/gi18n.h>
#include <string.h>

#include "core/text.h"
#include "core/units.h"
#include "plan/edits.h"
#include "words/buying.h"

#define FIELD(kind, label, hint, type, member, ...)                                                \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (type, member), __VA_ARGS__                                 \
  }

const BsField bs_buying_amounts[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("How sure"),
         N_ ("That all pieces come out of the boards bought, by the figures of warp"), BsPlan,
         buying.confidence_pct, &bs_limits.confidence),
  FIELD (BS_FIELD_NUMBER, N_ ("Spare laminations"),
         N_ ("Sawn beyond those needed, so that the best can go where they show"), BsPlan,
         buying.spare_pct, &bs_limits.spare),
};
const guint bs_n_buying_amounts = G_N_ELEMENTS (bs_buying_amounts);

const BsField bs_buying_size[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Laminations, at most"),
         N_ ("Across the slab: their thickness on edge, their width on flat"), BsPlan,
         buying.lamination_size, &bs_limits.lamination_thickness),
};
const guint bs_n_buying_size = G_N_ELEMENTS (bs_buying_size);

static const char *const firsts[] = {
  N_ ("whichever yields more"),
  N_ ("crosscut first"),
  N_ ("rip first"),
  NULL,
};

const BsField bs_buying_saw[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Kerf"), N_ ("Width of the saw’s cut"), BsPlan, shop.saw.kerf,
         &bs_limits.kerf),
  FIELD (BS_FIELD_NUMBER, N_ ("Off each end"), N_ ("For checks"), BsPlan, shop.saw.end_trim,
         &bs_limits.trim),
  FIELD (BS_FIELD_NUMBER, N_ ("Off each edge"),
         N_ ("For wane; more is taken where crook asks for it"), BsPlan, shop.saw.edge_trim,
         &bs_limits.trim),
  FIELD (BS_FIELD_NUMBER, N_ ("Edge allowance"),
         N_ ("Off each edge of a strip beyond straight, for tool marks"), BsPlan,
         shop.saw.edge_allowance, &bs_limits.allowance),
  FIELD (BS_FIELD_NUMBER, N_ ("Spring"),
         N_ ("How far a strip one metre long bends when it is ripped; it goes with the square of "
             "the length"),
         BsPlan, shop.saw.spring_per_m, &bs_limits.spring),
  FIELD (BS_FIELD_NUMBER, N_ ("Shortest offcut"), N_ ("That is worth keeping"), BsPlan,
         shop.saw.min_offcut, &bs_limits.offcut),
  FIELD (BS_FIELD_CHOICE, N_ ("Order of cuts"), NULL, BsPlan, shop.saw.first, .choices = firsts),
};
const guint bs_n_buying_saw = G_N_ELEMENTS (bs_buying_saw);

/* Parts. */

static const BsField part_fields[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Part"), N_ ("What it is: leg, rail …"), BsPart, name),
  FIELD (BS_FIELD_WOOD, N_ ("Wood"), NULL, BsPart, wood),
  FIELD (BS_FIELD_WHOLE, N_ ("Number"), NULL, BsPart, count, &bs_limits.part_count),
  FIELD (BS_FIELD_NUMBER, N_ ("Length"), N_ ("Finished, along the grain"), BsPart, length,
         &bs_limits.lamination_length, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Width"), N_ ("Finished"), BsPart, width, &bs_limits.part_width,
         .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Thickness"), N_ ("Finished"), BsPart, thickness,
         &bs_limits.part_thickness, .without_unit = TRUE),
  FIELD (BS_FIELD_SWITCH, N_ ("On show"), N_ ("From the best looking stock"), BsPart, is_on_show),
};

static guint
count_parts (const BsPlan *plan, const char *owner)
{
  return plan->parts->len;
}

static char *
dup_part_id (const BsPlan *plan, const char *owner, guint index)
{
  return g_strdup (((BsPart *)g_ptr_array_index (plan->parts, index))->id);
}

/* An id that no lamination has either. */
static char *
make_part_id (const BsPlan *plan)
{
  g_autoptr (GPtrArray) taken = g_ptr_array_copy (plan->parts, NULL, NULL);

  g_ptr_array_set_free_func (taken, NULL);
  g_ptr_array_extend (taken, plan->laminations, NULL, NULL);
  return bs_record_make_id (taken, "part");
}

static BsPlan *
add_part (const BsPlan *plan, const char *owner)
{
  BsPlan *copy = bs_plan_copy (plan);
  g_autofree char *id = make_part_id (plan);
  BsPart *part = bs_part_new (id);

  bs_text_set (&part->name, _ ("Leg"));
  if (plan->woods->len > 0)
    bs_text_set (&part->wood, ((BsWood *)g_ptr_array_index (plan->woods, 0))->id);
  part->count = 4;
  part->length = 700.0;
  part->width = 90.0;
  part->thickness = 40.0;
  g_ptr_array_add (copy->parts, part);
  return copy;
}

static BsPlan *
take_off_part (const BsPlan *plan, const char *owner, guint index)
{
  const BsPart *part = g_ptr_array_index (plan->parts, index);
  return bs_edit_remove_part ((BsPlan *)plan, part->id);
}

const BsRows bs_buying_parts = {
  .heading = N_ ("Other parts"),
  .add_label = N_ ("Add a part"),
  .none
  = N_ ("None. What else is wanted of the same wood, legs and rails for instance, is cut from "
        "what the laminations leave."),
  .record = &bs_record_part,
  .fields = part_fields,
  .n_fields = G_N_ELEMENTS (part_fields),
  .count = count_parts,
  .dup_id = dup_part_id,
  .add = add_part,
  .take_off = take_off_part,
};

/* Offers. */

static const char *const price_units[] = {
  NC_ ("price of", "piece"),
  NC_ ("price of", "bd ft"),
  NC_ ("price of", "m³"),
  NULL,
};

/* "2440; 3050 (4)": lengths, and how many there are of one where that is limited. */
static char *
format_lengths (gconstpointer record, const BsPlan *plan)
{
  const BsOffer *offer = record;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < offer->lengths->len; i++)
    {
      const BsOfferLength *length = &g_array_index (offer->lengths, BsOfferLength, i);
      g_autofree char *size
          = plan->units == BS_UNIT_SYSTEM_INCH
                ? bs_words_board_length (length->length, plan->units)
                : bs_units_format_number (length->length, BS_QUANTITY_LENGTH, plan->units);

      g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", size);
      if (length->supply != BS_SUPPLY_OPEN)
        g_string_append_printf (text, " (%d)", length->supply);
    }
  return g_string_free (text, FALSE);
}

/* Takes the number in brackets off the end of a text. */
static gboolean
cut_supply (char *text, int *supply, GError **error)
{
  char *bracket = strchr (text, '(');
  guint64 number = 0;

  *supply = BS_SUPPLY_OPEN;
  if (bracket == NULL)
    return TRUE;
  g_autofree char *inside = g_strndup (bracket + 1, strcspn (bracket + 1, ")"));
  if (!g_ascii_string_to_unsigned (g_strstrip (inside), 10, 0, (guint64)bs_limits.supply.most,
                                   &number, NULL))
    {
      g_set_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX,
                   /* Translators: what was typed. */
                   _ ("“%s” is no number of boards. Write how many there are in brackets after the "
                      "length: 2440 (4)."),
                   inside);
      return FALSE;
    }
  *supply = (int)number;
  *bracket = '\0';
  return TRUE;
}

static gboolean
parse_length (const char *word, const BsPlan *plan, BsOfferLength *length, GError **error)
{
  g_autofree char *text = g_strdup (word);
  const BsLimit *limit = &bs_limits.board_length;

  *length = (BsOfferLength){ 0 };
  if (!cut_supply (text, &length->supply, error)
      || !bs_units_parse (g_strstrip (text), limit->quantity, plan->units, &length->length, error))
    return FALSE;
  if (bs_limit_contains (limit, length->length))
    return TRUE;
  g_set_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX,
               /* Translators: what was typed. */
               _ ("“%s” is no length of a board. Check its unit."), text);
  return FALSE;
}

static gboolean
parse_lengths (gpointer record, const BsPlan *plan, const char *text, GError **error)
{
  BsOffer *offer = record;
  g_auto (GStrv) lists = g_strsplit (text, ", ", -1); /* a comma alone may be a decimal mark */
  g_autofree char *list = g_strjoinv (";", lists);
  g_auto (GStrv) words = g_strsplit (list, ";", BS_MAX_OFFER_LENGTHS + 1);
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (BsOfferLength));

  for (guint i = 0; words[i] != NULL && lengths->len < BS_MAX_OFFER_LENGTHS; i++)
    {
      BsOfferLength length;
      if (*g_strstrip (words[i]) == '\0')
        continue;
      if (!parse_length (words[i], plan, &length, error))
        return FALSE;
      g_array_append_val (lengths, length);
    }
  g_array_set_size (offer->lengths, 0);
  g_array_append_vals (offer->lengths, lengths->data, lengths->len);
  return TRUE;
}

/* Who sells what for how much, in a line of its own; then what sizes. */
#define N_OFFER_FIRST 4

static const BsField offer_fields[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Yard"), NULL, BsOffer, yard),
  FIELD (BS_FIELD_WOOD, N_ ("Wood"), NULL, BsOffer, wood),
  FIELD (BS_FIELD_MONEY, N_ ("Price"), N_ ("Empty: not known"), BsOffer, price_minor,
         .without_unit = TRUE, .chars = 7),
  FIELD (BS_FIELD_CHOICE, N_ ("For a"), N_ ("What the price is of"), BsOffer, price_unit,
         .choices = price_units, .choices_context = "price of"),
  FIELD (BS_FIELD_NUMBER, N_ ("Thickness"), N_ ("Rough, as it is sold: 52 mm, 8/4"), BsOffer,
         thickness, &bs_limits.board_thickness, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Width"), N_ ("Width of the narrowest board"), BsOffer, width_least,
         &bs_limits.board_width, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("To"), N_ ("Width of the widest board"), BsOffer, width_most,
         &bs_limits.board_width, .without_unit = TRUE),
  FIELD (BS_FIELD_SWITCH, N_ ("Pick"),
         N_ ("Widths may be chosen from the pile; if not, only the least is counted on"), BsOffer,
         may_pick),
  FIELD (BS_FIELD_OWN, N_ ("Lengths"),
         N_ ("With ; between them, and the number there is in brackets where it is limited: "
             "2440; 3050 (4)"),
         BsOffer, lengths, .chars = 16, .format = format_lengths, .parse = parse_lengths),
};

static guint
count_offers (const BsPlan *plan, const char *owner)
{
  return plan->offers->len;
}

static char *
dup_offer_id (const BsPlan *plan, const char *owner, guint index)
{
  return g_strdup (((BsOffer *)g_ptr_array_index (plan->offers, index))->id);
}

/* What a yard that measures in the person's units would have: 50 mm or 8/4, in usual sizes. */
static void
set_usual_sizes (BsOffer *offer, BsUnitSystem units)
{
  gboolean is_inch = units == BS_UNIT_SYSTEM_INCH;
  double lengths[] = { is_inch ? 2438.4 : 2500.0, is_inch ? 3048.0 : 3000.0 };

  offer->thickness = is_inch ? 2.0 * BS_MM_PER_INCH : 52.0;
  offer->width_least = is_inch ? 6.0 * BS_MM_PER_INCH : 150.0;
  offer->width_most = is_inch ? 9.0 * BS_MM_PER_INCH : 230.0;
  offer->price_unit = is_inch ? BS_PRICE_BOARD_FOOT : BS_PRICE_CUBIC_METRE;
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      BsOfferLength length = { lengths[i], BS_SUPPLY_OPEN, NULL };
      g_array_append_val (offer->lengths, length);
    }
}

/* The next one is like the last: a yard has several thicknesses of one wood. */
static BsPlan *
add_offer (const BsPlan *plan, const char *owner)
{
  BsPlan *copy = bs_plan_copy (plan);
  g_autofree char *id = bs_record_make_id (copy->offers, "offer");
  BsOffer *offer;

  if (copy->offers->len > 0)
    {
      offer = bs_offer_copy (g_ptr_array_index (copy->offers, copy->offers->len - 1));
      bs_text_set (&offer->id, id);
    }
  else
    {
      offer = bs_offer_new (id);
      set_usual_sizes (offer, plan->units);
      if (plan->woods->len > 0)
        bs_text_set (&offer->wood, ((BsWood *)g_ptr_array_index (plan->woods, 0))->id);
    }
  g_ptr_array_add (copy->offers, offer);
  return copy;
}

static BsPlan *
take_off_offer (const BsPlan *plan, const char *owner, guint index)
{
  const BsOffer *offer = g_ptr_array_index (plan->offers, index);
  return bs_edit_remove_offer ((BsPlan *)plan, offer->id);
}

const BsRows bs_buying_offers = {
  .heading = N_ ("What yards offer"),
  .add_label = N_ ("Add an offer"),
  .none = N_ ("The yard is empty. Add what is to be had: a wood in a thickness, its widths and "
              "lengths, and a price."),
  .record = &bs_record_offer,
  .fields = offer_fields,
  .n_first = N_OFFER_FIRST,
  .n_fields = G_N_ELEMENTS (offer_fields),
  .count = count_offers,
  .dup_id = dup_offer_id,
  .add = add_offer,
  .take_off = take_off_offer,
};
