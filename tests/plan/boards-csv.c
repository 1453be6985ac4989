/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/boards-csv.h"

#include "core/text.h"
#include "plan/csv.h"
#include "plan/document.h"
#include "plan/edits.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* A metric plan in EUR with sugar maple and two boards. */
static BsPlan *
new_plan (void)
{
  BsPlan *plan = bs_plan_new ();
  BsWood *wood = bs_wood_new ("maple-sugar");

  bs_text_set (&wood->name, "Maple, sugar (hard maple)");
  g_ptr_array_add (plan->woods, wood);
  bs_text_set (&plan->currency, "EUR");
  for (int i = 0; i < 2; i++)
    {
      BsBoard *board = bs_board_new (i == 0 ? "first" : "second");
      bs_text_set (&board->label, i == 0 ? "A" : "B");
      bs_text_set (&board->wood, "maple-sugar");
      board->length = 2000.0;
      board->width = 150.0 + i;
      board->thickness = 50.8;
      g_ptr_array_add (plan->boards, board);
    }
  return plan;
}

/* "A maple-sugar 50.80x150.0x2000 8 % 12.00 1/2/3/4 5,6", what is not known left out. */
static void
describe_board (const BsBoard *board, GString *text)
{
  const struct
  {
    const char *mark;
    double value;
  } more[] = { { " m", board->moisture_pct }, { " b", board->bow },   { " c", board->crook },
               { " u", board->cup },          { " t", board->twist }, { " y", board->pith_y },
               { " z", board->pith_z } };

  g_string_append_printf (text, "%s%s:%s %.2fx%.1fx%.0f", *board->id != '\0' ? board->id : "",
                          board->label != NULL ? board->label : "",
                          board->wood != NULL ? board->wood : "", board->thickness, board->width,
                          board->length);
  if (board->price_minor > 0)
    g_string_append_printf (text, " p%" G_GINT64_FORMAT, board->price_minor);
  for (gsize i = 0; i < G_N_ELEMENTS (more); i++)
    if (!isnan (more[i].value))
      g_string_append_printf (text, "%s%g", more[i].mark, more[i].value);
  for (gsize i = 0; i < BS_N_FACES; i++)
    if (board->run_out[i] != 0)
      g_string_append_printf (text, " r%zu%+d", i, board->run_out[i]);
}

/* Boards, then problems as !line or !line-column, with what makes their sentences apart. */
static char *
describe (const BsBoardsTable *table)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < table->boards->len; i++)
    {
      g_string_append (text, text->len > 0 ? "; " : "");
      describe_board (table->boards->pdata[i], text);
    }
  for (guint i = 0; i < table->problems->len; i++)
    {
      const BsBoardsProblem *problem = table->problems->pdata[i];
      g_assert_true (g_utf8_validate (problem->sentence, -1, NULL));
      g_string_append_printf (text, "%s!%u%s%s", text->len > 0 ? "; " : "", problem->line,
                              problem->column != NULL ? "-" : "",
                              problem->column != NULL ? problem->column : "");
    }
  return g_string_free (text, FALSE);
}

#define HEADER "label,thickness,width,length\n"

typedef struct
{
  const char *path;
  const char *text;
  const char *wanted; /* NULL: refused whole */
  guint n_broken;
} Row;

/* Sizes by hand: 8/4 is 2 in = 50.80 mm, 8' is 96 in = 2438.4 mm, 4 1/2" is 114.3 mm, 1 3/4 in is
 * 44.45 mm, 12 ft is 3657.6 mm. */
static const Row rows[] = {
  { "plain", HEADER "A,50,150,2440\n", "A: 50.00x150.0x2440" },
  { "mixed-units", HEADER "A,8/4,4 1/2\",8'\nB,1 3/4,120 mm,2.44 m\n",
    "A: 50.80x114.3x2438; B: 44.45x120.0x2440" },
  { "all-columns",
    "label,wood,thickness,width,length,moisture,price,bow,crook,cup,twist,pith_y,pith_z\n"
    "A,sugar maple,8/4,150,2440,8.5,42.50,3,-2,1,0.5,10,-60\n",
    "A:maple-sugar 50.80x150.0x2440 p4250 m8.5 b3 c-2 u1 t0.5 y10 z-60" },
  /* By face: 0 the front edge, 1 the back edge, 2 the top, 3 the underside. */
  { "run-out",
    "thickness,width,length,run_out_top,run_out_underside,run_out_front,run_out_back\n"
    "50,150,2440,right,left,-1,1\n50,150,2440,LEFT,,0,Right\n",
    ": 50.00x150.0x2440 r0-1 r1+1 r2+1 r3-1; : 50.00x150.0x2440 r1+1 r2-1" },
  { "run-out-by-its-title", "thickness,width,length,Top planes cleanly\n50,150,2440,right\n",
    ": 50.00x150.0x2440 r2+1" },
  { "run-out-of-no-end",
    "thickness,width,length,run_out_top\n50,150,2440,up\n50,150,2440,2\n50,150,2440,left\n",
    ": 50.00x150.0x2440 r2-1; !2-Top planes cleanly; !3-Top planes cleanly", 2 },
  { "any-order", "Length,WIDTH, thickness ,Label\n2440,150,50,A\n", "A: 50.00x150.0x2440" },
  { "unit-in-brackets", "thickness (in),width (in),length (ft)\n2,6,8\n", ": 50.80x152.4x2438" },
  { "unit-after-line", "thickness_mm,width_mm,length_mm\n50,150,2440\n", ": 50.00x150.0x2440" },
  { "unit-after-comma", "\"Thickness, in\";\"Width, in\";\"Length, mm\"\n2;6;2440\n",
    ": 50.80x152.4x2440" },
  { "cell-names-its-own-unit", "thickness (in),width (in),length (in)\n50 mm,6,2440 mm\n",
    ": 50.00x152.4x2440" },
  { "semicolons-and-commas", "label;thickness;width;length;price\nA;50,8;150,5;2440;42,50\n",
    "A: 50.80x150.5x2440 p4250" },
  { "tabs", "thickness\twidth\tlength\n50\t150\t2440", ": 50.00x150.0x2440" },
  { "mark-of-order", "\xEF\xBB\xBFthickness,width,length\n50,150,2440\n", ": 50.00x150.0x2440" },
  { "quoted", "thickness,width,length\n\"8/4\",\"4 1/2\"\"\",\"8'\"\n", ": 50.80x114.3x2438" },
  { "windows-line-ends", "thickness,width,length\r\n50,150,2440\r\n", ": 50.00x150.0x2440" },
  { "empty-lines", "\nthickness,width,length\n\n50,150,2440\n\n,,\n", ": 50.00x150.0x2440" },
  { "only-a-header", "thickness,width,length\n", "" },
  { "label-with-line-end", HEADER "\"A\nB\",50,150,2440\n", "A\nB: 50.00x150.0x2440" },
  { "wood-of-the-table", "wood,thickness,width,length\nBeech European,50,150,2440\n",
    ":european-beech 50.00x150.0x2440" },
  { "wood-by-its-botanical-name", "wood,thickness,width,length\nfagus SYLVATICA,50,150,2440\n",
    ":european-beech 50.00x150.0x2440" },
  { "wood-of-the-plan-first", "wood,thickness,width,length\nmaple,50,150,2440\n",
    ":maple-sugar 50.00x150.0x2440" },
  { "short-row", "thickness,width,length,price\n50,150,2440\n", ": 50.00x150.0x2440" },
  { "empty-cells-at-the-end", HEADER "A,50,150,2440,,\n", "A: 50.00x150.0x2440" },

  { "unknown-column", "thickness,width,length,colour\n50,150,2440,pink\n",
    ": 50.00x150.0x2440; !1" },
  { "unknown-unit", "thickness,width,length,bow (ell)\n50,150,2440,3\n", ": 50.00x150.0x2440; !1" },
  { "other-currency", "thickness,width,length,price (USD)\n50,150,2440,3\n",
    ": 50.00x150.0x2440; !1" },
  { "column-twice", "thickness,width,length,width\n50,150,2440,200\n", ": 50.00x150.0x2440; !1" },

  { "negative", HEADER "A,50,-150,2440\n", "!2-Width", 1 },
  { "zero", HEADER "A,0,150,2440\n", "!2-Thickness", 1 },
  { "absurd", HEADER "A,50,150,2440 m\n", "!2-Length", 1 },
  { "words", HEADER "A,thick,150,2440\n", "!2-Thickness", 1 },
  { "unknown-unit-in-a-cell", HEADER "A,50,150,3 ells\n", "!2-Length", 1 },
  { "missing", HEADER "A,50,,2440\n", "!2-Width", 1 },
  { "all-missing", HEADER "A\n", "!2-Thickness; !2-Width; !2-Length", 1 },
  { "not-a-number", HEADER "A,nan,inf,1e3\n", "!2-Thickness; !2-Width; !2-Length", 1 },
  { "divided-by-nothing", HEADER "A,8/0,150,2440\n", "!2-Thickness", 1 },
  { "thousands-or-a-part", "thickness;width;length\n50;150;2,440\n", "!2-Length", 1 },
  { "decimal-comma-among-commas", HEADER "A,50,8,150,2440\n", "!2", 1 },
  { "no-wood", "wood,thickness,width,length\nunobtainium,50,150,2440\n", "!2-Wood", 1 },
  { "two-woods", "wood,thickness,width,length\npine,50,150,2440\n", "!2-Wood", 1 },
  { "negative-price", "thickness,width,length,price\n50,150,2440,-1\n", "!2-Price", 1 },
  { "unlimited-price", "thickness,width,length,price\n50,150,2440,99999999999\n", "!2-Price", 1 },
  { "wet", "thickness,width,length,moisture\n50,150,2440,500\n", "!2-Moisture", 1 },
  { "never-closed", HEADER "A,50,150,2440\n\"B,50,150,2440\nC,50,150,2440\n",
    "A: 50.00x150.0x2440; C: 50.00x150.0x2440; !3", 1 },
  { "after-a-mark", HEADER "\"A\"x,50,150,2440\nB,50,150,2440\n", "B: 50.00x150.0x2440; !2", 1 },
  { "lines-are-counted-through-cells", HEADER "\"A\nB\",50,150,2440\nC,0,150,2440\n",
    "A\nB: 50.00x150.0x2440; !4-Thickness", 1 },
  { "some-good-some-not", HEADER "A,50,150,2440\nB,0,150,2440\nC,50,150,2440\nD,50,x,y\n",
    "A: 50.00x150.0x2440; C: 50.00x150.0x2440; !3-Thickness; !5-Width; !5-Length", 2 },

  { "empty", "", NULL },
  { "blank", " \n\n", NULL },
  { "no-header", "A,50,150,2440\n", NULL },
  { "no-length", "thickness,width\n50,150\n", NULL },
  { "not-text", "thickness,width,length\n50,150,\xFF\n", NULL },
};

static void
test_read (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoardsTable) table
      = bs_boards_csv_read (row->text, strlen (row->text), plan, &error);

  if (row->wanted == NULL)
    {
      g_assert_null (table);
      g_assert_true (error->domain == BS_CSV_ERROR || error->domain == BS_DOCUMENT_ERROR);
      g_assert_true (g_str_has_suffix (error->message, "."));
      return;
    }
  g_assert_no_error (error);
  g_autofree char *found = describe (table);
  g_assert_cmpstr (found, ==, row->wanted);
  g_assert_cmpuint (table->n_broken, ==, row->n_broken);
}

/* What is pasted at a cell; the boards' ids stand before their labels. */
typedef struct
{
  const char *path;
  const char *text;
  guint first;
  BsBoardColumn column;
  const char *wanted;
} Paste;

#define LETTERS_60 "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyzabcdefgh"

static const Paste pastes[] = {
  { "one-cell", "160", 0, BS_BOARD_WIDTH, "firstA:maple-sugar 50.80x160.0x2000" },
  { "one-row", "160\t2500\n", 0, BS_BOARD_WIDTH, "firstA:maple-sugar 50.80x160.0x2500" },
  { "column", "160\n170\n", 0, BS_BOARD_WIDTH,
    "firstA:maple-sugar 50.80x160.0x2000; secondB:maple-sugar 50.80x170.0x2000" },
  { "over-the-end", "160\n170\n", 1, BS_BOARD_WIDTH,
    "secondB:maple-sugar 50.80x160.0x2000; :maple-sugar 50.80x170.0x2000" },
  { "new-rows", "C\tmaple\t4/4\nD\tmaple\t5/4", 2, BS_BOARD_LABEL,
    "C:maple-sugar 25.40x151.0x2000; D:maple-sugar 31.75x151.0x2000" },
  { "csv-text", "C,maple,4/4", 2, BS_BOARD_LABEL, "C:maple-sugar 25.40x151.0x2000" },
  { "with-a-gap", "160\n\n170", 0, BS_BOARD_WIDTH,
    "firstA:maple-sugar 50.80x160.0x2000; :maple-sugar 50.80x170.0x2000" },
  { "empties-a-cell", "A\t\t50", 0, BS_BOARD_LABEL, "firstA: 50.00x150.0x2000" },
  { "with-a-header", "width\tthickness\tlength\n200\t30\t1000", 0, BS_BOARD_LABEL,
    ": 30.00x200.0x1000" },
  { "broken", "0\n160", 0, BS_BOARD_WIDTH, "secondB:maple-sugar 50.80x160.0x2000; !1-Width" },
  /* docs/boards-csv.md: 60 letters at most. */
  { "long-label", LETTERS_60, 0, BS_BOARD_LABEL,
    "first" LETTERS_60 ":maple-sugar 50.80x150.0x2000" },
  { "too-long-label", LETTERS_60 "x", 0, BS_BOARD_LABEL, "!1-Label" },
  { "too-many-cells", "left\tleft\tleft", 0, BS_BOARD_RUN_OUT_FRONT, "!1" },
};

static void
test_paste (gconstpointer data)
{
  const Paste *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoardsTable) table
      = bs_boards_paste (row->text, plan, row->first, row->column, &error);

  g_assert_no_error (error);
  g_autofree char *found = describe (table);
  g_assert_cmpstr (found, ==, row->wanted);
}

/* A wood of the program's table comes into the plan with the first board that is of it. */
static void
test_woods (void)
{
  static const char text[]
      = "wood,thickness,width,length\nBeech European,50,150,2440\nbeech european,50,150,2440\n";
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read (text, strlen (text), plan, NULL);
  g_autoptr (BsPlan) edited
      = bs_edit_put_boards (plan, table->boards, table->woods, plan->boards->len);

  g_assert_cmpuint (edited->woods->len, ==, 2);
  g_assert_cmpuint (edited->boards->len, ==, 4);
  g_autofree char *written = bs_document_write (edited);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) again = bs_document_parse (written, strlen (written), &error);
  g_assert_no_error (error);
  g_assert_nonnull (bs_plan_find_wood (again, "european-beech"));
}

/* What is written is read again as the same boards, in either system of units. */
static void
test_write (gconstpointer data)
{
  g_autoptr (BsPlan) plan = new_plan ();
  BsBoard *board = plan->boards->pdata[0];

  plan->units = (BsUnitSystem)GPOINTER_TO_INT (data);
  board->thickness = 44.45;
  board->width = 114.3;
  board->length = 3657.6;
  board->moisture_pct = 8.5;
  board->price_minor = 123450;
  board->bow = -3.175; /* 1/8 in: three decimals of an inch */
  board->pith_z = -60.0;
  board->run_out[BS_FACE_TOP] = -1;
  board->run_out[BS_FACE_RIGHT] = 1;
  bs_text_set (&board->label, "7; \"the good one\", wide");
  g_autofree char *text = bs_boards_csv_write (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read (text, strlen (text), plan, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (table->problems->len, ==, 0);
  g_assert_cmpuint (table->boards->len, ==, 2);
  const BsBoard *again = table->boards->pdata[0];
  g_assert_cmpstr (again->label, ==, board->label);
  g_assert_cmpstr (again->wood, ==, board->wood);
  g_assert_cmpfloat_with_epsilon (again->thickness, 44.45, 0.01);
  g_assert_cmpfloat_with_epsilon (again->width, 114.3, 0.01);
  g_assert_cmpfloat_with_epsilon (again->length, 3657.6, 0.01);
  g_assert_cmpfloat_with_epsilon (again->moisture_pct, 8.5, 0.01);
  g_assert_cmpfloat_with_epsilon (again->bow, -3.175, 0.01);
  g_assert_cmpfloat_with_epsilon (again->pith_z, -60.0, 0.01);
  g_assert_cmpint (again->price_minor, ==, 123450);
  g_assert_true (isnan (again->crook));
  for (guint i = 0; i < BS_N_FACES; i++)
    g_assert_cmpint (again->run_out[i], ==, board->run_out[i]);
}

/* Where the comma is the decimal mark, semicolons separate, and 2.440 could mean thousands. */
static void
test_comma (void)
{
  static const char typed[] = "thickness;width;length\n50,8;150,5;2,440\n50,8;150,5;2.440\n";
  g_autoptr (BsPlan) plan = new_plan ();

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL && setlocale (LC_NUMERIC, "de_DE.utf8") == NULL)
    {
      g_test_skip ("the locale de_DE.UTF-8 is not installed");
      return;
    }
  g_autofree char *text = bs_boards_csv_write (plan);
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read (text, strlen (text), plan, NULL);
  g_autoptr (BsBoardsTable) by_hand = bs_boards_csv_read (typed, strlen (typed), plan, NULL);
  g_autoptr (BsBoardsTable) pasted = bs_boards_paste ("150,5", plan, 0, BS_BOARD_WIDTH, NULL);
  g_assert_nonnull (setlocale (LC_NUMERIC, "C"));

  g_assert_nonnull (strstr (text, ";50,8;150;2000;"));
  g_assert_cmpuint (table->boards->len, ==, 2);
  g_assert_cmpuint (table->problems->len, ==, 0);
  g_autofree char *found = describe (by_hand);
  g_assert_cmpstr (found, ==, "!2-Length; !3-Length");
  g_assert_cmpfloat_with_epsilon (((BsBoard *)pasted->boards->pdata[0])->width, 150.5, 1e-9);
}

/* A plan holds 20000 boards: two are there, so that the last two of 20000 are left out. */
static void
test_too_many (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  GString *text = g_string_new ("thickness,width,length\n");

  for (int i = 0; i < BS_MAX_BOARDS; i++)
    g_string_append (text, "50,150,2440\n");
  g_autofree char *bytes = g_string_free (text, FALSE);
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read (bytes, strlen (bytes), plan, NULL);

  g_assert_cmpuint (table->boards->len, ==, BS_MAX_BOARDS - 2);
  g_assert_cmpuint (table->n_broken, ==, 2);
  g_assert_cmpuint (table->problems->len, ==, 1);
  g_assert_cmpuint (((BsBoardsProblem *)table->problems->pdata[0])->line, ==, BS_MAX_BOARDS);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/boards-csv/read/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_read);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (pastes); i++)
    {
      g_autofree char *path = g_strconcat ("/boards-csv/paste/", pastes[i].path, NULL);
      g_test_add_data_func (path, &pastes[i], test_paste);
    }
  g_test_add_func ("/boards-csv/woods", test_woods);
  g_test_add_data_func ("/boards-csv/write/metric", GINT_TO_POINTER (BS_UNIT_SYSTEM_METRIC),
                        test_write);
  g_test_add_data_func ("/boards-csv/write/inch", GINT_TO_POINTER (BS_UNIT_SYSTEM_INCH),
                        test_write);
  g_test_add_func ("/boards-csv/comma", test_comma);
  g_test_add_func ("/boards-csv/too-many", test_too_many);
  return g_test_run ();
}
