// The framework's ambient types; nothing of our own.
export {};
