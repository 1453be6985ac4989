/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Where the program's templates, style and examples are among the resources. */
#define BS_RESOURCES "/io/github/broadstave/Broadstave"
