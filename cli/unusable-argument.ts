/** An argument that a command cannot use; its message is told in one line and the status is 2. */
export class UnusableArgument extends Error {}
