// SPDX-License-Identifier: Apache-2.0
/** Whether printed pictures are sharp enough and reach far enough. One public class, a check; everything else serves it. */
package kerfglow.check.print;
