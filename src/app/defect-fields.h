/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n.h>

#include "app/field-editor.h"
#include "words/words.h"

G_BEGIN_DECLS

/* The fields of a defect, whatever it is on: the initialiser of an array of BsField. The faces to
 * choose from and what they mean, and from where it is measured across, are the owner's. */
#define BS_DEFECT_FIELD(kind, label, hint, member, ...)                                            \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (BsDefect, member), __VA_ARGS__                             \
  }

#define BS_DEFECT_FIELDS(face_names, face_context, face_hint, across_hint)                         \
  {                                                                                                \
    BS_DEFECT_FIELD (BS_FIELD_CHOICE, N_ ("Defect"), NULL, kind, .choices = bs_words_defects,      \
                     .choices_context = BS_WORDS_DEFECT_CONTEXT),                                  \
        BS_DEFECT_FIELD (BS_FIELD_CHOICE, N_ ("On"), face_hint, face, .choices = (face_names),     \
                         .choices_context = (face_context)),                                       \
        BS_DEFECT_FIELD (BS_FIELD_NUMBER, N_ ("From"), N_ ("From the left end"), x_from,           \
                         &bs_limits.defect_along),                                                 \
        BS_DEFECT_FIELD (BS_FIELD_NUMBER, N_ ("To"), N_ ("From the left end"), x_to,               \
                         &bs_limits.defect_along),                                                 \
        BS_DEFECT_FIELD (BS_FIELD_NUMBER, N_ ("Across, from"), across_hint, across_from,           \
                         &bs_limits.defect_across),                                                \
        BS_DEFECT_FIELD (BS_FIELD_NUMBER, N_ ("Across, to"), NULL, across_to,                      \
                         &bs_limits.defect_across),                                                \
        BS_DEFECT_FIELD (BS_FIELD_NUMBER, N_ ("Severity"),                                         \
                         N_ ("0: hardly seen, 1: plain, 2: spoils the face"), severity,            \
                         &bs_limits.severity),                                                     \
  }

G_END_DECLS
