// SPDX-License-Identifier: Apache-2.0
/** What a person or a program sees of a result: text, JSON, a picture. Views show; they never compute a result again. */
package kerfglow.views;
