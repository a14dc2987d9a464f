// SPDX-License-Identifier: Apache-2.0
/** Light in the can of a lit letter or cabinet: modules, direct light, light sent on by back, walls and face, the map on the face. Plain JTS. */
package kerfglow.light;
