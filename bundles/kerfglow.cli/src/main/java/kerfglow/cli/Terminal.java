// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

/**
 * What the streams lead to.
 *
 * @param colour true when standard output is a terminal that shows colour
 * @param progress true when standard error is a terminal, so that a line may be overwritten
 */
record Terminal(boolean colour, boolean progress) {
    /** No terminal at all. */
    static final Terminal NONE = new Terminal(false, false);

    /** The launch script says which streams are terminals, since Java cannot tell them apart. */
    static Terminal ofThisProcess() {
        String streams = System.getProperty("kerfglow.terminal", "");
        boolean dumb = "dumb".equals(System.getenv("TERM")) || System.getenv("NO_COLOR") != null;
        return new Terminal(streams.contains("out") && !dumb, streams.contains("err"));
    }
}
