/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/table-names.h"

#include <glib/gi18n-lib.h>

/* Woods are called as their source tables call them: first the kind, then which. */
const char *const bs_words_woods[] = {
  NC_ ("wood", "Alder, red"),
  NC_ ("wood", "Ash, European"),
  NC_ ("wood", "Ash, black"),
  NC_ ("wood", "Ash, green"),
  NC_ ("wood", "Ash, white"),
  NC_ ("wood", "Aspen, quaking"),
  NC_ ("wood", "Baldcypress"),
  NC_ ("wood", "Basswood, American"),
  NC_ ("wood", "Beech, American"),
  NC_ ("wood", "Beech, European"),
  NC_ ("wood", "Birch, European"),
  NC_ ("wood", "Birch, paper"),
  NC_ ("wood", "Birch, sweet"),
  NC_ ("wood", "Birch, yellow"),
  NC_ ("wood", "Butternut"),
  NC_ ("wood", "Cedar, Port-Orford"),
  NC_ ("wood", "Cedar, eastern red"),
  NC_ ("wood", "Cedar, western red"),
  NC_ ("wood", "Cedar, yellow"),
  NC_ ("wood", "Cherry, black"),
  NC_ ("wood", "Chestnut, American"),
  NC_ ("wood", "Cottonwood, eastern"),
  NC_ ("wood", "Douglas-fir, coast"),
  NC_ ("wood", "Elm, American"),
  NC_ ("wood", "Fir, white"),
  NC_ ("wood", "Hackberry"),
  NC_ ("wood", "Hemlock, western"),
  NC_ ("wood", "Hickory, pecan"),
  NC_ ("wood", "Hickory, shagbark"),
  NC_ ("wood", "Iroko"),
  NC_ ("wood", "Jarrah"),
  NC_ ("wood", "Larch, European"),
  NC_ ("wood", "Larch, western"),
  NC_ ("wood", "Locust, black"),
  NC_ ("wood", "Mahogany, African (khaya)"),
  NC_ ("wood", "Mahogany, American (true)"),
  NC_ ("wood", "Maple, bigleaf"),
  NC_ ("wood", "Maple, black"),
  NC_ ("wood", "Maple, red"),
  NC_ ("wood", "Maple, silver"),
  NC_ ("wood", "Maple, sugar (hard maple)"),
  NC_ ("wood", "Maple, sycamore"),
  NC_ ("wood", "Meranti, dark red"),
  NC_ ("wood", "Meranti, light red"),
  NC_ ("wood", "Oak, European"),
  NC_ ("wood", "Oak, northern red"),
  NC_ ("wood", "Oak, white"),
  NC_ ("wood", "Pine, Scots"),
  NC_ ("wood", "Pine, eastern white"),
  NC_ ("wood", "Pine, loblolly"),
  NC_ ("wood", "Pine, longleaf"),
  NC_ ("wood", "Pine, ponderosa"),
  NC_ ("wood", "Pine, red"),
  NC_ ("wood", "Pine, shortleaf"),
  NC_ ("wood", "Pine, slash"),
  NC_ ("wood", "Pine, sugar"),
  NC_ ("wood", "Pine, western white"),
  NC_ ("wood", "Purpleheart"),
  NC_ ("wood", "Redwood, old-growth"),
  NC_ ("wood", "Redwood, young-growth"),
  NC_ ("wood", "Sapele"),
  NC_ ("wood", "Sassafras"),
  NC_ ("wood", "Spanish-cedar"),
  NC_ ("wood", "Spruce, Engelmann"),
  NC_ ("wood", "Spruce, Norway"),
  NC_ ("wood", "Spruce, Sitka"),
  NC_ ("wood", "Sweetgum"),
  NC_ ("wood", "Sycamore, American"),
  NC_ ("wood", "Tamarack"),
  NC_ ("wood", "Teak"),
  NC_ ("wood", "Tupelo, black"),
  NC_ ("wood", "Walnut, European"),
  NC_ ("wood", "Walnut, black"),
  NC_ ("wood", "Willow, black"),
  NC_ ("wood", "Yellow-poplar"),
  NULL,
};

const char *const bs_words_adhesives[] = {
  NC_ ("adhesive", "PVA emulsion, D2"),
  NC_ ("adhesive", "Aliphatic-modified vinyl emulsion"),
  NC_ ("adhesive", "Cross-linking PVA, D3"),
  NC_ ("adhesive", "Cross-linking PVA with hardener, D4"),
  NC_ ("adhesive", "One-component polyurethane"),
  NC_ ("adhesive", "Urea-formaldehyde, set at room temperature"),
  NC_ ("adhesive", "Melamine-urea-formaldehyde, two-part"),
  NC_ ("adhesive", "Phenol-resorcinol or resorcinol-formaldehyde"),
  NC_ ("adhesive", "Two-part epoxy"),
  NC_ ("adhesive", "Hot hide or bone glue"),
  NC_ ("adhesive", "Liquid hide glue"),
  NC_ ("adhesive", "Casein powder in alkaline water"),
  NULL,
};

/* A name that the person gave is no message and stays as it is. */
static const char *
translate (const char *context, const char *name)
{
  return name != NULL ? g_dpgettext2 (GETTEXT_PACKAGE, context, name) : "";
}

const char *
bs_words_wood (const BsWood *wood)
{
  return translate ("wood", wood->name);
}

const char *
bs_words_adhesive (const BsAdhesive *adhesive)
{
  return translate ("adhesive", adhesive->name);
}
