/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/timber.h"

#include "core/money.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
describe_caution (BsMillingCautions caution, const BsRough *piece, const BsMillingShop *shop,
                  BsUnitSystem units)
{
  g_autofree char *width = bs_units_format (piece->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *jointer = bs_units_format (shop->jointer_width, BS_QUANTITY_LENGTH, units);
  g_autofree char *planer = bs_units_format (shop->planer_width, BS_QUANTITY_LENGTH, units);
  g_autofree char *shortest = bs_units_format (shop->shortest, BS_QUANTITY_LENGTH, units);
  g_autofree char *thinnest = bs_units_format (shop->thinnest, BS_QUANTITY_LENGTH, units);

  switch (caution)
    {
    case BS_MILLING_WIDE_FOR_JOINTER:
      return g_strdup_printf (
          /* Translators: widths of a piece and of a machine. */
          _ ("The piece is %s wide, the jointer takes %s: rip it first, or flatten the first face "
             "by hand, on a sled, or wedged on a carrier board through the planer."),
          width, jointer);
    case BS_MILLING_WIDE_FOR_PLANER:
      return g_strdup_printf (
          /* Translators: widths of a piece and of a machine. */
          _ ("The piece is %s wide, the planer takes %s: rip it first, or plane it by hand or on a "
             "sled."),
          width, planer);
    case BS_MILLING_SHORT:
      return g_strdup_printf (
          /* Translators: a length. */
          _ ("Pieces shorter than %s must not be fed to jointer or planer: mill two lengths as one "
             "and cut them afterwards. The machine’s maker has the last word."),
          shortest);
    case BS_MILLING_THIN:
      return g_strdup_printf (
          /* Translators: a thickness. */
          _ ("It ends thinner than %s: plane it on a carrier board."), thinnest);
    case BS_MILLING_CROOKED:
      return g_strdup (
          _ ("Its edge is crooked: straighten one edge in a jig or at the jointer before it goes "
             "along the fence of the saw, or it can close on the blade and be thrown back."));
    case BS_MILLING_ROCKS:
      return g_strdup (
          _ ("It rocks on a flat table: flatten a face before it is ripped, or rip it where it "
             "cannot rock, with a riving knife."));
    default:
      g_return_val_if_reached (NULL);
    }
}

char **
bs_words_milling (const BsRough *piece, const BsMillingShop *shop, BsUnitSystem units)
{
  BsMillingCautions cautions = bs_milling_cautions (piece, shop);
  GPtrArray *sentences = g_ptr_array_new ();

  for (guint i = 0; i < BS_N_MILLING_CAUTIONS; i++)
    if ((cautions & (1 << i)) != 0)
      g_ptr_array_add (sentences,
                       describe_caution ((BsMillingCautions)(1 << i), piece, shop, units));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}

char *
bs_words_need (const BsMillingNeed *need, const BsMillingWish *wish, const char *class,
               BsUnitSystem units)
{
  g_autofree char *thickness = bs_units_format (need->thickness, BS_QUANTITY_LENGTH, units);
  g_autofree char *width = bs_units_format (need->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *length = bs_units_format (need->length, BS_QUANTITY_LENGTH, units);
  g_autofree char *sure = bs_units_format (100.0 * wish->confidence, BS_QUANTITY_PERCENT, units);

  if (class == NULL)
    return g_strdup_printf (
        /* Translators: three sizes, then a probability in per cent. */
        _ ("Rough boards must be %s thick, %s wide and %s long to be %s sure of it."), thickness,
        width, length, sure);
  return g_strdup_printf (
      /* Translators: three sizes, a probability in per cent, the trade's name of a thickness. */
      _ ("Rough boards must be %s thick, %s wide and %s long to be %s sure of it: ask for %s."),
      thickness, width, length, sure, class);
}

char *
bs_words_layers (const BsLayerWay *thick, const BsLayerWay *thin, const BsLumberSeries *series,
                 double thick_minor, double thin_minor, const char *currency, BsUnitSystem units)
{
  g_autofree char *thick_volume = bs_units_format (thick->volume, BS_QUANTITY_VOLUME, units);
  g_autofree char *thin_volume = bs_units_format (thin->volume, BS_QUANTITY_VOLUME, units);
  g_autofree char *thick_cost = bs_money_format (thick_minor, currency);
  g_autofree char *thin_cost = bs_money_format (thin_minor, currency);

  if (thick->row < 0)
    return g_strdup_printf (
        /* Translators: number of layers, the trade's name of a thickness, a volume, a price. */
        _ ("No single board is thick enough. %d layers of %s do: %s for each piece, %s."),
        thin->layers, series->rows[thin->row].name, thin_volume, thin_cost);
  return g_strdup_printf (
      /* Translators: name of a thickness, volume, price; then number of layers and the same. */
      _ ("One layer of %s takes %s for each piece and costs %s; %d layers of %s take %s and cost "
         "%s."),
      series->rows[thick->row].name, thick_volume, thick_cost, thin->layers,
      series->rows[thin->row].name, thin_volume, thin_cost);
}
